import { useId } from 'preact/hooks';

/** Chooses a backup file. Text files of any name will do: some phones rename what they share. */
export function RestoreButton({ onFile }: { readonly onFile: (file: File) => void }) {
  const id = useId();
  return (
    <div class="file-pick">
      <input
        id={id}
        class="visually-hidden"
        type="file"
        accept=".txt,.json,text/plain,application/json"
        onChange={(event) => {
          const input = event.currentTarget;
          const file = input.files?.[0];
          // Emptied, so that choosing the same file again is noticed.
          input.value = '';
          if (file) onFile(file);
        }}
      />
      <label class="button button-plain" for={id}>
        Restore a backup
      </label>
    </div>
  );
}
