/** What a record holds itself under a key: names that people type must not reach what every object inherits. */
export const own = <T>(record: Readonly<Record<string, T>>, key: string): T | undefined =>
  Object.hasOwn(record, key) ? record[key] : undefined;
