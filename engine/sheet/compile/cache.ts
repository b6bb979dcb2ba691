/** Programs by sheet and by what varies, and whether this place allows WebAssembly at all. */
import type { Sheet } from '../types.ts';
import { encodeModule, FunctionBody } from './bytes.ts';
import { compileProgram, type Program } from './program.ts';

const LOAD_SPLAT = 0x0a;
const ANY_TRUE = 0x53;

const MOST_PER_SHEET = 24;
const PROGRAMS = new WeakMap<object, Map<string, Program>>();

let allowed: boolean | undefined;

/** Whether WebAssembly with SIMD can be compiled here; a page's policy or an old browser may refuse it. */
export function webAssemblyAllowed(): boolean {
  allowed ??= probe();
  return allowed;
}

function probe(): boolean {
  try {
    const body = new FunctionBody(2);
    body.zero().memory(LOAD_SPLAT, 0, 3).simd(ANY_TRUE);
    new WebAssembly.Module(encodeModule({ imports: [], functions: [{ name: 'probe', body }] }));
    return true;
  } catch {
    return false;
  }
}

/** The compiled program, or undefined where WebAssembly is refused. */
export function programFor(
  sheet: Sheet,
  varying: ReadonlySet<string>,
  wanted: ReadonlySet<string>,
): Program | undefined {
  if (!webAssemblyAllowed()) return undefined;
  const name = `${[...varying].sort()}|${wanted.size === sheet.derived.length ? '*' : [...wanted].sort()}`;
  const programs = PROGRAMS.get(sheet) ?? new Map<string, Program>();
  PROGRAMS.set(sheet, programs);
  const found = programs.get(name);
  if (found) return found;
  const made = compileProgram(sheet, varying, wanted);
  if (programs.size >= MOST_PER_SHEET) programs.delete(programs.keys().next().value!);
  programs.set(name, made);
  return made;
}
