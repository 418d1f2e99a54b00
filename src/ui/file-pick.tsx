import { useId } from 'preact/hooks';

export interface FilePickProps {
  /** What the button says. */
  readonly label: string;
  /** As in HTML: `.csv,text/csv`. */
  readonly accept: string;
  readonly onFile: (file: File) => void;
}

/** A button that chooses one file on the phone. */
export function FilePick({ label, accept, onFile }: FilePickProps) {
  const id = useId();
  return (
    <div class="file-pick">
      <input
        id={id}
        class="visually-hidden"
        type="file"
        accept={accept}
        onChange={(event) => {
          const input = event.currentTarget;
          const file = input.files?.[0];
          // Emptied, so that choosing the same file again is noticed.
          input.value = '';
          if (file) onFile(file);
        }}
      />
      <label class="button button-plain" for={id}>
        {label}
      </label>
    </div>
  );
}
