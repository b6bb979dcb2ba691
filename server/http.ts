/** A request as a route sees it, and what it answers. */
import type { ServerResponse } from 'node:http';

export type Method = 'GET' | 'POST' | 'PUT';

export interface Ask {
  /** What stood at the `:name`s of the route's path, decoded. */
  readonly at: Readonly<Record<string, string>>;
  readonly query: URLSearchParams;
  /** Header names in lower case. */
  readonly headers: Readonly<Record<string, string | string[] | undefined>>;
  /** Empty where the route takes none. */
  readonly body: Buffer;
}

export interface Answer {
  readonly status: number;
  readonly headers?: Readonly<Record<string, string>>;
  /** A function writes for as long as it likes, and ends the response itself. */
  readonly body: string | Uint8Array | ((response: ServerResponse) => void);
}

export interface Route {
  readonly method: Method;
  /** '/api/refits/:id'. */
  readonly path: string;
  /** What it takes in: the content types and the most bytes. */
  readonly takes?: { readonly types: readonly string[]; readonly most: number };
  readonly handle: (ask: Ask) => Answer | Promise<Answer>;
}
