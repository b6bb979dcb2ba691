/** JSON from a stranger: parsed only after its size, depth, repeated keys and reserved keys have been looked at. */
import { visit } from 'jsonc-parser';
import { ok, type Problem, type Result, refuse } from '../quantity/types.ts';
import { LIMITS } from './limits.ts';
import { isReservedKey } from './schema.ts';
import { pathText } from './shape.ts';

/** Parses strict JSON (RFC 8259); `what` names the text in refusals: 'refit.json', 'edits.jsonl line 12'. */
export function parseJson(text: string, what: string, maxBytes: number): Result<unknown> {
  if (text.length > maxBytes)
    return refuse({
      code: 'too-long',
      message: `${what} is longer than ${maxBytes / 1e6} MB, the most that is read.`,
    });
  const plain = text.startsWith('\ufeff') ? text.slice(1) : text;
  const problem = tooDeep(plain, what) ?? irregular(plain, what);
  if (problem) return refuse(problem);
  try {
    return ok(JSON.parse(plain));
  } catch {
    return refuse({ code: 'malformed', message: `${what} is not JSON.` });
  }
}

/** Before any parser that calls itself: counts open brackets outside quotation marks. */
function tooDeep(text: string, what: string): Problem | undefined {
  let depth = 0;
  let quoted = false;
  for (let at = 0; at < text.length; at++) {
    const char = text.charCodeAt(at);
    if (quoted) {
      if (char === 0x5c) at++;
      else if (char === 0x22) quoted = false;
    } else if (char === 0x22) quoted = true;
    else if (char === 0x7b || char === 0x5b) {
      if (++depth > LIMITS.depth) {
        const [line, column] = lineAndColumn(text, at);
        return {
          code: 'malformed',
          message: `${what} is nested more than ${LIMITS.depth} levels deep at line ${line}, column ${column}.`,
          where: `line ${line}, column ${column}`,
        };
      }
    } else if (char === 0x7d || char === 0x5d) depth--;
  }
  return undefined;
}

function irregular(text: string, what: string): Problem | undefined {
  let problem: Problem | undefined;
  const keys: Set<string>[] = [];
  visit(
    text,
    {
      onObjectBegin: () => {
        keys.push(new Set());
        return problem === undefined;
      },
      onObjectEnd: () => {
        keys.pop();
      },
      onObjectProperty: (key, _offset, _length, line, column, parents) => {
        if (problem) return;
        const seen = keys.at(-1)!;
        const fault = isReservedKey(key)
          ? 'is a name that programs keep for themselves; take it out'
          : seen.has(key)
            ? 'stands there twice; keep one of them'
            : undefined;
        seen.add(key);
        if (fault === undefined) return;
        const where = pathText([...parents(), key]);
        problem = {
          code: 'malformed',
          message: `${what}, line ${line + 1}, column ${column + 1}: ${where} ${fault}.`,
          where,
        };
      },
      onError: (_error, _offset, _length, line, column) => {
        problem ??= {
          code: 'malformed',
          message: `${what} is not JSON: it cannot be read from line ${line + 1}, column ${column + 1}.`,
          where: `line ${line + 1}, column ${column + 1}`,
        };
      },
    },
    { disallowComments: true, allowTrailingComma: false },
  );
  return problem;
}

function lineAndColumn(text: string, at: number): [line: number, column: number] {
  const before = text.slice(0, at).split('\n');
  return [before.length, before.at(-1)!.length + 1];
}
