/** Long enough for any phone to have read the file, short enough not to hold it for the whole day. */
const DOWNLOAD_MS = 60_000;

/** Starts the download of a file: where nothing can be shared, this still brings it out. */
export function download(file: File): void {
  const url = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = url;
  link.download = file.name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), DOWNLOAD_MS);
}
