/** Hands the reader a file made on the spot. */
export const download = (name: string, text: BlobPart, type: string): void => {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([text], { type }));
  link.download = name;
  link.click();
  URL.revokeObjectURL(link.href);
};
