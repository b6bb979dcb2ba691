/** A whole number from an address or a header, where it is one that an edit could have. */
export const wholeNumber = (text: string): number | undefined =>
  /^\d{1,9}$/.test(text) ? Number(text) : undefined;
