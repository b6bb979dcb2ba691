/** What a request carries: its type and size are looked at before it is read, and again while it is. */
import type { IncomingMessage } from 'node:http';
import type { z } from 'zod';
import { checkShape } from '../engine/refit/index.ts';
import { parseJson } from '../engine/refit/json.ts';
import { refusal, refusedBy } from './answer.ts';
import type { Answer, Ask, Route } from './http.ts';

/** Refused; thrown so that what reads a body need not ask at every step. */
export class Refusal extends Error {
  readonly answer: Answer;
  constructor(answer: Answer) {
    super('refused');
    this.answer = answer;
  }
}

/** The whole body, or a Refusal. */
export async function readBody(request: IncomingMessage, takes: Route['takes']): Promise<Buffer> {
  if (!takes) return Buffer.alloc(0);
  const type = (request.headers['content-type'] ?? '').split(';')[0]!.trim().toLowerCase();
  // Forms of other pages cannot send these types without asking first, which is never granted.
  if (!takes.types.includes(type))
    throw new Refusal(
      refusal(
        415,
        'unsupported-type',
        `This must be sent as ${takes.types.join(' or ')}${type === '' ? '' : `, not as ${type.slice(0, 60)}`}.`,
        undefined,
        { accept: takes.types.join(', ') },
      ),
    );
  const encoding = request.headers['content-encoding'] ?? 'identity';
  if (encoding !== 'identity')
    throw new Refusal(refusal(415, 'unsupported-type', 'This must be sent as it is, not packed.'));
  if (Number(request.headers['content-length'] ?? 0) > takes.most) throw tooLong(takes.most);
  const pieces: Buffer[] = [];
  let size = 0;
  // Not a loop over the request: leaving one would cut the connection before the refusal is read.
  await new Promise<void>((done, fail) => {
    request.on('data', (piece: Buffer) => {
      size += piece.length;
      if (size <= takes.most) pieces.push(piece);
      else fail(tooLong(takes.most));
    });
    request.on('end', done);
    request.on('error', () => fail(new Gone()));
    request.on('close', () => fail(new Gone()));
  });
  return Buffer.concat(pieces);
}

/** The asker went away before all had come; there is nobody to answer. */
export class Gone extends Error {}

const tooLong = (most: number): Refusal =>
  new Refusal(
    refusal(
      413,
      'too-long',
      `That is too much at once; this takes ${sayBytes(most)} at most, so nothing was kept.`,
    ),
  );

const sayBytes = (bytes: number): string =>
  bytes >= 1e6 ? `${Math.floor(bytes / 1e5) / 10} MB` : `${Math.floor(bytes / 1e3)} kB`;

/** The body as JSON of a shape, or a Refusal: 400 where it is no JSON, 422 where it has another shape. */
export function readJson<T>(ask: Ask, schema: z.ZodType<T>): T {
  let text: string;
  try {
    text = new TextDecoder('utf-8', { fatal: true }).decode(ask.body);
  } catch {
    throw new Refusal(refusal(400, 'not-json', 'What was sent is not text in UTF-8.'));
  }
  if (text.trim() === '')
    throw new Refusal(refusal(400, 'not-json', 'Nothing was sent; this needs a JSON object.'));
  const parsed = parseJson(text, 'What was sent', ask.body.length);
  if (!parsed.ok) throw new Refusal(refusal(400, 'not-json', parsed.problem.message, parsed.problem.where));
  const shaped = checkShape(schema, parsed.value);
  if (!shaped.ok) throw new Refusal(refusedBy(shaped.problem));
  return shaped.value;
}
