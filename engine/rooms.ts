/**
 * The rooms in their order. A room imports only rooms above it in its list;
 * `tests/rooms.test.ts` reads this list and every import, type imports included.
 */
export const ENGINE_ROOMS = [
  'quantity',
  'tables',
  'sheet',
  'parts',
  'refit',
  'handbook',
  'threads',
  'metrology',
  'simulate',
  'circuit',
  'checks',
  'assess',
  'evidence',
  'advice',
  'work',
  'control',
] as const;

/** The rooms around the engine. Each may import the engine, none may import another. */
export const OUTER_ROOMS = ['store', 'server', 'cli', 'web'] as const;

/** Imports between outer rooms that are allowed all the same: the server is the store's only user, the command line starts the server. */
export const OUTER_EXCEPTIONS: readonly (readonly [from: string, to: string])[] = [
  ['server', 'store'],
  ['cli', 'server'],
];
