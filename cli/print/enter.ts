/** The command line that enters a fact, and what may stand in it. */
import { factSpec } from '../../engine/parts/index.ts';
import { quoted } from './text.ts';

interface Entering {
  readonly command: string;
  /** What to write for the capitals. */
  readonly write: string;
}

const options = (of: Readonly<Record<string, string>>): string =>
  Object.entries(of)
    .map(([id, words]) => `${id} (${words})`)
    .join(', ');

/** How a person enters what a path leads to. */
export function entering(file: string, path: string): Entering {
  const [place = '', fact = ''] = path.split('.').slice(-2);
  const spec = factSpec(place, fact);
  const command = (value: string, rest = ''): string => `fettle set ${quoted(file)} ${path} ${value}${rest}`;
  const basis = ' --basis BASIS';
  if (!spec) return { command: command('VALUE'), write: 'VALUE is fitted or none.' };
  switch (spec.kind) {
    case 'quantity':
      return {
        command: command("'VALUE'", basis),
        write: `VALUE is ${spec.unit === '1' ? 'a plain number' : `a number with its unit, such as ${spec.unit}`}, with ± where there is doubt; usual is ${spec.plausible[0]} to ${spec.plausible[1]}.`,
      };
    case 'choice':
      return { command: command('VALUE', basis), write: `VALUE is one of ${options(spec.options)}.` };
    case 'choices':
      return {
        command: command("'VALUE'", basis),
        write: `VALUE is one or more, with commas between, of ${options(spec.options)}.`,
      };
    case 'curve':
      return {
        command: command("'VALUE'", basis),
        write: `VALUE is points such as “1.1 ${spec.unit} at 300 ${spec.xUnit}; 0.8 ${spec.unit} at 600 ${spec.xUnit}”.`,
      };
    case 'text':
      return { command: command("'VALUE'", basis), write: 'VALUE is any text.' };
  }
}
