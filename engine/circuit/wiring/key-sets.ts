/** Sets of ids kept under keys: an empty set is none. */

export function enter(index: Map<string, Set<string>>, key: string, id: string): void {
  const set = index.get(key);
  if (set) set.add(id);
  else index.set(key, new Set([id]));
}

export function drop(index: Map<string, Set<string>>, key: string, id: string): void {
  const set = index.get(key);
  if (!set) return;
  set.delete(id);
  if (set.size === 0) index.delete(key);
}
