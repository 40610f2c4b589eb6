/** Hands a file to the person: the browser or the desktop window asks where to, or puts it with the downloads. */
export function saveFile(file: Blob, name: string): void {
  const address = URL.createObjectURL(file);
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The download has taken hold of the data by the next turn; until then the address has to stand.
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
}
