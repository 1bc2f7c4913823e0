/** Hands a text over to be saved under a name. */
export function saveFile(name: string, type: string, text: string): void {
  const url = URL.createObjectURL(new Blob([text], { type }));
  Object.assign(document.createElement('a'), { href: url, download: name }).click();
  // The browser reads it after the click has been dealt with.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}
