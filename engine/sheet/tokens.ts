/** Text of an expression → its words, each with where it stands. */
import { ExpressionError } from './errors.ts';

export interface Token {
  readonly kind: 'number' | 'name' | 'sign' | 'end';
  readonly text: string;
  /** Characters before it. */
  readonly at: number;
}

const NUMBER = /(?:\d+\.?\d*|\.\d+)(?:[eE][+-]?\d+)?/y;
const NAME = /[A-Za-z_][A-Za-z0-9_]*/y;
const SIGN = /<=|>=|==|!=|[-+*/^<>(),?:]/y;
const SPACE = /[ \t]+/y;

export function tokensOf(text: string): readonly Token[] {
  const tokens: Token[] = [];
  let at = 0;
  const match = (pattern: RegExp): string | undefined => {
    pattern.lastIndex = at;
    return pattern.exec(text)?.[0];
  };
  while (at < text.length) {
    const space = match(SPACE);
    if (space) {
      at += space.length;
      continue;
    }
    const token = read(match, at);
    if (!token) throw new ExpressionError(strayText(text, at));
    tokens.push(token);
    at += token.text.length;
  }
  tokens.push({ kind: 'end', text: 'the end', at });
  return tokens;
}

function read(match: (pattern: RegExp) => string | undefined, at: number): Token | undefined {
  for (const [kind, pattern] of [
    ['number', NUMBER],
    ['name', NAME],
    ['sign', SIGN],
  ] as const) {
    const text = match(pattern);
    if (text) return { kind, text, at };
  }
  return undefined;
}

function strayText(text: string, at: number): string {
  const stray = String.fromCodePoint(text.codePointAt(at)!);
  if (stray === '=') return "'=' has no place in an expression; a comparison is written '=='";
  return `the character ${JSON.stringify(stray)} has no place in an expression`;
}
