/** Answers kept by their question: drawn over and over, work asks the same of the thread book again and again. */
const MOST = 200;

/** The same function, with its last answers kept. Its arguments and its answer must be plain data, never changed. */
export function remember<A extends readonly unknown[], R>(how: (...args: A) => R): (...args: A) => R {
  const found = new Map<string, R>();
  return (...args) => {
    const key = JSON.stringify(args);
    if (found.has(key)) return found.get(key)!;
    const answer = how(...args);
    if (found.size >= MOST) found.delete(found.keys().next().value!);
    found.set(key, answer);
    return answer;
  };
}
