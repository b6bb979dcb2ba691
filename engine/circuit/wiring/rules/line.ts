import { lineDriver } from '../../../handbook/line-driver.ts';
import { evaluate } from '../../../sheet/index.ts';
import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { hertz, metres, terminalName } from '../check/say.ts';
import { trace } from '../check/trace.ts';
import type { View } from '../check/view.ts';
import { SOURCE } from '../sources.ts';
import type { DifferentialInput, Input, Nature, WiringFinding } from '../types.ts';

/** Without reckoning: as far and as fast as a single line with TTL levels may go. Policy. */
const SINGLE = { metres: 3, hertz: 100e3 } as const;
const HABIT = 'common practice, no source';
/** A line has at most this many terminals on its way. */
const FAR = 40;

/** How fast and how far a signal travels, against what its kind of line carries. Asked where it is read. */
export const line: Rule = {
  id: 'line',
  title: 'Does this kind of line carry the signal so far, so fast?',
  of: ['input', 'differential-input'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const input = terminal.nature as Input | DifferentialInput;
    if (view.wiresAt(id).length === 0) return [];
    if (input.kind === 'differential-input' ? input.half !== 'plus' : input.leg === 'minus') return [];
    // An opto input may be driven at either of its ends.
    for (const end of input.kind === 'input' && terminal.with !== null ? [id, terminal.with] : [id]) {
      const path = trace(view, end).find(({ source }) => {
        const { kind } = view.terminal(source)!.nature;
        return kind === 'output' || kind === 'differential-output';
      });
      if (path) return judgeLine(view, id, end, path.source, path.resistors, input);
    }
    return [];
  },
};

function judgeLine(
  view: View,
  id: string,
  end: string,
  source: string,
  resistors: readonly string[],
  input: Input | DifferentialInput,
): readonly WiringFinding[] {
  const output = view.terminal(source)!.nature;
  const sent = frequencyOf(output);
  const way = wayOf(view, end, source);
  if (sent === undefined || !way || way.cables.length === 0) return [];
  const about = [id, source, ...way.cables];
  const name = terminalName(view, id);
  const read = input.frequency;
  const made: WiringFinding[] = [];
  if (read !== undefined && read < sent)
    made.push(
      found(
        line,
        about,
        'tight',
        `${source} can send up to ${hertz(sent)}, and ${name} follows up to ${hertz(read)}: keep the rate below that in the settings.`,
        {
          part: 'rate',
          margin: read / sent,
          figures: [figure('sent', sent, 'kHz'), figure('read', read, 'kHz')],
        },
      ),
    );
  // What is read sets the rate that matters where it is the lower of both.
  const rate = read === undefined ? sent : Math.min(sent, read);
  if (way.length === undefined)
    return [
      ...made,
      found(
        line,
        about,
        'unknown',
        `How far ${source} is from ${name} is not known; whether this kind of line reaches so far hangs on it.`,
        { needs: way.cables.map((cable) => `${cable}.length`) },
      ),
    ];
  const figures = [figure('length', way.length, 'm'), figure('rate', rate, 'kHz')];
  if (output.kind === 'differential-output') {
    const { f_square_max } = evaluate(lineDriver, { L: way.length });
    const can = f_square_max.state === 'known' ? f_square_max.value : 0;
    const margin = can / rate;
    made.push(
      found(
        line,
        about,
        verdictOf(margin, 1),
        `A pair of ${metres(way.length)} carries ${hertz(can)}; ${source} sends ${hertz(rate)}.`,
        {
          margin,
          figures: [...figures, figure('it carries', can, 'kHz')],
          source: SOURCE.curve,
          remedy: margin >= 1 ? undefined : 'Shorten the cable, or lower the rate.',
        },
      ),
    );
    return made;
  }
  const pull = pullOhms(view, resistors, input, output);
  if (output.kind === 'output' && output.stage === 'sinking' && pull !== undefined) {
    const { f_rc, t_r } = evaluate(lineDriver, { L: way.length, R: pull, C_m: way.capacitance });
    const can = f_rc.state === 'known' ? f_rc.value : 0;
    const margin = can / rate;
    made.push(
      found(
        line,
        about,
        verdictOf(margin),
        `The line is pulled up by ${Math.round(pull)} Ω over ${metres(way.length)}; its edges are clean up to ${hertz(can)}, and ${hertz(rate)} are to pass.`,
        {
          margin,
          figures: [
            ...figures,
            figure('it carries', can, 'kHz'),
            ...(t_r.state === 'known' ? [figure('rise time', t_r.value, 'µs')] : []),
          ],
          source:
            'derived: charging a cable through a resistor; a tenth of a period for the rise is common practice',
          remedy:
            margin < 1.25 ? 'Take a smaller pull-up, a shorter cable, or a differential output.' : undefined,
        },
      ),
    );
    return made;
  }
  // A current loop through an LED is not troubled by a few metres; a voltage is.
  const current = input.kind === 'input' && input.form !== 'logic';
  const far = current ? SINGLE.metres * 3 : SINGLE.metres;
  const margin = Math.min(
    far / way.length,
    rate <= SINGLE.hertz ? 1e6 : current ? (5 * SINGLE.hertz) / rate : SINGLE.hertz / rate,
  );
  made.push(
    found(
      line,
      about,
      margin < 1 ? 'tight' : 'fits',
      margin < 1
        ? `${source} is a single line, ${metres(way.length)} long at up to ${hertz(rate)}: that goes well up to about ${metres(far)} and ${hertz(current ? 5 * SINGLE.hertz : SINGLE.hertz)}, beyond it becomes a matter of luck.`
        : `A single line of ${metres(way.length)} carries ${hertz(rate)}.`,
      {
        margin: Math.min(margin, 1e6),
        figures,
        source: HABIT,
        remedy:
          margin < 1 ? 'Take a line driver and a twisted pair, or bring the two closer together.' : undefined,
      },
    ),
  );
  return made;
}

const frequencyOf = (nature: Nature): number | undefined =>
  nature.kind === 'output' || nature.kind === 'differential-output' ? nature.frequency : undefined;

function pullOhms(
  view: View,
  resistors: readonly string[],
  input: Input | DifferentialInput,
  output: Nature,
): number | undefined {
  if (
    output.kind !== 'output' ||
    output.stage !== 'sinking' ||
    input.kind !== 'input' ||
    input.form !== 'logic'
  )
    return undefined;
  const outside = resistors[0] === undefined ? undefined : view.terminal(resistors[0])?.nature;
  return outside?.kind === 'resistor' ? outside.ohms : input.pull?.ohms;
}

interface Way {
  /** Undefined where the length of one of its cables is not known. */
  readonly length: number | undefined;
  readonly cables: readonly string[];
  /** F/m, the most of its cables. */
  readonly capacitance: number;
}

/** Through wires and metal from one terminal to another, fuses aside. */
function wayOf(view: View, from: string, to: string): Way | undefined {
  const seen = new Map<string, Way>([[from, { length: 0, cables: [], capacitance: 0 }]]);
  for (const [terminal, way] of seen) {
    if (terminal === to) return way;
    if (seen.size > FAR) return undefined;
    for (const { to: next, wire } of view.neighbours(terminal)) {
      if (seen.has(next)) continue;
      const read = wire === null ? undefined : view.wire(wire);
      const cable = read?.cable == null ? undefined : view.cable(read.cable);
      if (!read || !cable) {
        seen.set(next, way);
        continue;
      }
      seen.set(next, {
        length: way.length === undefined || read.length === undefined ? undefined : way.length + read.length,
        cables: [...way.cables, cable.id],
        capacitance: Math.max(way.capacitance, cable.capacitance),
      });
    }
  }
  return undefined;
}
