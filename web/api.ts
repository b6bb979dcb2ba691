/** Talks to the server. A refusal comes back as an error with the server's own sentence. */
import type { Change } from '../engine/refit/types.ts';
import type {
  EditKept,
  EditPage,
  NewRefitAsked,
  PhotoKept,
  PhotoList,
  RefitImported,
  RefitList,
  RefitMade,
  RefitOpened,
  Seen,
  WireProblem,
} from '../engine/refit/wire.ts';

export class Refusal extends Error {
  readonly problem: WireProblem;
  /** What stands there now, for a conflict. */
  readonly now: string | undefined;

  constructor(problem: WireProblem, now?: string) {
    super(problem.message);
    this.problem = problem;
    this.now = now;
  }
}

const GONE: WireProblem = {
  code: 'closing',
  message:
    'Fettle’s server does not answer. Is it still running in its terminal? What you typed is not lost as long as this page stays open.',
};

async function call<T>(path: string, init: RequestInit = {}): Promise<T> {
  let response: Response;
  try {
    response = await fetch(path, init);
  } catch {
    throw new Refusal(GONE);
  }
  const body: unknown = await response.json().catch(() => undefined);
  if (response.ok) return body as T;
  const refused = body as { problem?: WireProblem; now?: string } | undefined;
  throw new Refusal(
    refused?.problem ?? {
      code: 'own-mistake',
      message: `The server answered with ${response.status} and no reason.`,
    },
    refused?.now,
  );
}

const post = <T>(path: string, body: unknown): Promise<T> =>
  call<T>(path, {
    method: 'POST',
    headers: { 'Content-Type': 'application/json' },
    body: JSON.stringify(body),
  });

const at = (id: string): string => `/api/refits/${encodeURIComponent(id)}`;

export const api = {
  list: () => call<RefitList>('/api/refits'),
  create: (asked: NewRefitAsked) => post<RefitMade>('/api/refits', asked),
  open: (id: string) => call<RefitOpened>(at(id)),
  edit: (id: string, who: string, basedOn: number, changes: readonly Change[]) =>
    post<EditKept>(`${at(id)}/edits`, { who, basedOn, changes }),
  undo: (id: string, who: string, number: number) => post<EditKept>(`${at(id)}/undo`, { who, number }),
  history: (id: string, from: number, to?: number) =>
    call<EditPage>(`${at(id)}/edits?from=${from}${to === undefined ? '' : `&to=${to}`}`),
  seen: (id: string, who: string) => call<Seen>(`${at(id)}/seen?who=${encodeURIComponent(who)}`),
  markSeen: (id: string, who: string, number: number) => post<Seen>(`${at(id)}/seen`, { who, number }),
  import: (file: Blob) =>
    call<RefitImported>('/api/import', {
      method: 'POST',
      headers: { 'Content-Type': 'application/octet-stream' },
      body: file,
    }),
  photos: (id: string) => call<PhotoList>(`${at(id)}/photos`),
  savePhoto: (id: string, name: string, photo: Blob) =>
    call<PhotoKept>(`${at(id)}/photos/${encodeURIComponent(name)}`, {
      method: 'PUT',
      headers: { 'Content-Type': 'application/octet-stream' },
      body: photo,
    }),
  photoUrl: (id: string, name: string) => `${at(id)}/photos/${encodeURIComponent(name)}`,
  fileUrl: (id: string, kind: 'refit' | 'json') => `${at(id)}/file.${kind}`,
  live: (id: string) => new EventSource(`${at(id)}/live`),
};
