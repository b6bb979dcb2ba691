/** Ids of refits: from the name, so that an address can be read, with a random ending, so that it is its own. */

/** 'Old lathe, shed' as 'old-lathe-shed-3f9a1c'. */
export function newId(name: string, random: string): string {
  const words = name
    .normalize('NFKD')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
    .replace(/-+$/, '');
  return `${words === '' ? 'refit' : words}-${random}`;
}
