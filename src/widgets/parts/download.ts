/** Hands the reader a file made on the spot. */
export const download = (name: string, text: BlobPart, type: string): void => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  // Some browsers fetch it a moment later.
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
};
