import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import { Button, ButtonRow, Sheet } from '../../ui/index.ts';
import './build.css';

export interface PaperSheetProps {
  readonly title: string;
  /** What is copied, asked for when it is wanted. */
  readonly text: () => string;
  readonly onClose: () => void;
  readonly children: ComponentChildren;
}

/** A sheet to take along: it prints without the page behind it, and its words can be copied. */
export function PaperSheet({ title, text, onClose, children }: PaperSheetProps) {
  const [said, setSaid] = useState('');
  const copy = async () => setSaid(await copied(text()));
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
            <Button onPress={() => void copy()}>Copy</Button>
            <Button kind="main" onPress={() => window.print()}>
              Print
            </Button>
          </ButtonRow>
        </div>
      }
    >
      <div class="paper">{children}</div>
    </Sheet>
  );
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
