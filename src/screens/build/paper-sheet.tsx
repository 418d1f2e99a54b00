import type { ComponentChildren, RefObject } from 'preact';
import { useEffect, useRef, useState } from 'preact/hooks';
import { Button, ButtonRow, Sheet } from '../../ui/index.ts';
import './build.css';

export interface PaperFrameProps {
  readonly title: string;
  /** What came of the last tap on `beside`. */
  readonly said: string;
  /** The other way out, beside printing. */
  readonly beside: ComponentChildren;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** A sheet to take along: it prints without the page behind it. */
export function PaperFrame({ title, said, beside, onClose, children }: PaperFrameProps) {
  const paper = useRef<HTMLDivElement>(null);
  usePages(paper);
  return (
    <Sheet
      title={title}
      onClose={onClose}
      actions={
        <div>
          <p class="paper-said" role="status">
            {said}
          </p>
          <ButtonRow>
            {beside}
            <Button kind="main" onPress={() => window.print()}>
              Print
            </Button>
          </ButtonRow>
        </div>
      }
    >
      <div class="paper" ref={paper}>
        {children}
      </div>
    </Sheet>
  );
}

export interface PaperSheetProps extends Pick<PaperFrameProps, 'title' | 'onClose' | 'children'> {
  /** The job's name, for paper: on the screen it stands above. */
  readonly job: string;
  /** What is copied, asked for when it is wanted. */
  readonly text: () => string;
}

/** A sheet whose words can be copied as well. */
export function PaperSheet({ title, job, text, onClose, children }: PaperSheetProps) {
  const [said, setSaid] = useState('');
  const copy = async () => setSaid(await copied(text()));
  const beside = <Button onPress={() => void copy()}>Copy</Button>;
  return (
    <PaperFrame {...{ title, said, beside, onClose }}>
      <p class="paper-job">{job}</p>
      {children}
    </PaperFrame>
  );
}

/**
 * A modal dialog is one page long on paper, whatever is in it: while the page is printed the sheet is a plain one, which
 * runs on from page to page.
 */
function usePages(paper: RefObject<HTMLElement | null>): void {
  useEffect(() => {
    const dialog = paper.current?.closest('dialog');
    if (!dialog) return;
    const before = () => {
      dialog.close();
      dialog.show();
    };
    const after = () => {
      dialog.close();
      dialog.showModal();
    };
    addEventListener('beforeprint', before);
    addEventListener('afterprint', after);
    return () => {
      removeEventListener('beforeprint', before);
      removeEventListener('afterprint', after);
    };
  }, [paper]);
}

/** Some browsers have no clipboard to write to, or refuse: then paper is left. */
async function copied(text: string): Promise<string> {
  const { clipboard } = navigator;
  if (!clipboard) return 'This browser cannot copy here: print it instead.';
  try {
    await clipboard.writeText(text);
    return 'Copied: paste it into a message or a sheet.';
  } catch (error) {
    if (!(error instanceof DOMException)) throw error;
    return 'The browser did not let it be copied: print it instead.';
  }
}
