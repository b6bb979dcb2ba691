/** Files that a command writes beside its answer; “-” stands for the standard output. */
import { type Call, type Command, TO_OUT } from './command.ts';
import { writeWhole } from './files.ts';
import { Refusal } from './refusal.ts';

/** A text written whole to a file, or to the standard output; `replace` writes over a file that is there. */
export function writeOut({ data, out }: Call['io'], path: string, text: string, replace: boolean): void {
  if (path.trim() === '') throw new Refusal('The name of the file to write is empty.');
  if (path === TO_OUT) (data ?? out)(text);
  else writeWhole(path, Buffer.from(text), replace);
}

/**
 * The call with nothing but the file on the standard output, where an option that writes one names “-” for it. Refuses
 * two texts on the standard output: no program could tell them apart.
 */
export function withOutput(command: Command, call: Call): Call {
  const named = Object.entries(command.options)
    .filter(([name, { writes }]) => writes === true && call.text(name) === TO_OUT)
    .map(([name]) => `--${name}`);
  const [first, second] = call.has('json') ? [...named, '--json'] : named;
  if (first === undefined || named.length === 0) return call;
  if (second !== undefined)
    throw new Refusal(
      `${first} - and ${second} would both write to the standard output; name a file for ${first}.`,
    );
  const { io } = call;
  return { ...call, io: { ...io, data: io.data ?? io.out, out: () => undefined } };
}
