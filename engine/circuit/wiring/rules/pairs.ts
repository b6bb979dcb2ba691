import { figure, found, type Rule } from '../check/rule.ts';
import { ohms, terminalName } from '../check/say.ts';
import { trace } from '../check/trace.ts';
import { SOURCE } from '../sources.ts';
import type { DifferentialInput } from '../types.ts';

/** A receiver of a differential pair, asked at its plus half. */
export const pairs: Rule = {
  id: 'pair',
  title: 'Is the pair whole, the right way round and terminated?',
  of: ['differential-input'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const input = terminal.nature as DifferentialInput;
    const other = terminal.with;
    if (input.half !== 'plus' || other === null) return [];
    const wired = [id, other].map((each) => view.wiresAt(each).length > 0);
    if (!wired[0] && !wired[1]) return [];
    const name = `${id} and ${other}`;
    if (!wired[0] || !wired[1])
      return [
        found(
          pairs,
          [id, other],
          'fails',
          `Only one half of the pair ${name} is connected; a receiver compares the two, and one wire alone reads noise.`,
          {
            remedy: `Connect ${wired[0] ? other : id} to the other half of the same output.`,
          },
        ),
      ];
    const sources = [id, other].map((each) => trace(view, each).map(({ source }) => source));
    const natures = sources.map((list) => list.map((each) => view.terminal(each)!.nature));
    const single = natures.findIndex((list) => list.some((each) => each.kind !== 'differential-output'));
    if (natures.some((list) => list.length === 0))
      return [
        found(pairs, [id, other], 'fails', `Nothing drives the pair ${name}.`, {
          remedy: 'Connect both halves to a differential output.',
        }),
      ];
    if (single >= 0)
      return [
        found(
          pairs,
          [id, other, ...sources[single]!],
          'fails',
          `${terminalName(view, sources[single]![0]!)} is no half of a pair; ${name} wants both halves of a differential output.`,
          {
            remedy: 'Put a line driver between them, which makes a pair of a single line.',
          },
        ),
      ];
    if (sources.some((list) => list.length > 1)) return [];
    const [one, two] = [view.terminal(sources[0]![0]!)!, view.terminal(sources[1]![0]!)!];
    if (one.with !== two.id)
      return [
        found(
          pairs,
          [id, other, one.id, two.id],
          'fails',
          `${one.id} and ${two.id} are halves of two different pairs.`,
          {
            remedy: `Take ${one.id} and ${one.with}.`,
          },
        ),
      ];
    if (one.nature.kind === 'differential-output' && one.nature.half === 'minus')
      return [
        found(
          pairs,
          [id, other, one.id, two.id],
          'fails',
          `The pair ${name} is reversed: plus goes to minus. The signal arrives upside down: a pulse counts at its wrong edge, an axis counts the other way round.`,
          {
            remedy: `Exchange the two wires at ${id} and ${other}.`,
          },
        ),
      ];
    const common = terminal.common;
    const from = one.common;
    if (common !== null && from !== null && !view.sameRail(common, from))
      return [
        found(
          pairs,
          [id, other, one.id, two.id],
          'fails',
          `The pair ${name} is right, but the 0 V of both ends are not joined: the receiver stands only ±${input.commonMode ?? 7} V between them.`,
          {
            source: 'TIA/EIA-422-B as quoted in interface data sheets',
            remedy: `Join ${from} to ${common} by a core of the same cable.`,
          },
        ),
      ];
    const rails = [view.rail(id)!, view.rail(other)!];
    const across = view.inRail(rails[0]!, 'resistor').find((each) => {
      const far = view.terminal(each)!.with;
      return far !== null && view.rail(far) === rails[1];
    });
    const outside = across === undefined ? undefined : view.terminal(across)!.nature;
    const termination = outside?.kind === 'resistor' ? outside.ohms : input.termination;
    if (termination === undefined)
      return [
        found(
          pairs,
          [id, other, one.id, two.id],
          'unknown',
          `The pair ${name} is whole and the right way round; whether a resistor of 100 to 120 Ω ends it is not known. Without one, fast edges ring and count twice.`,
          {
            needs: [`${id}.termination`],
            source: SOURCE.curve,
            remedy: `Look in the manual for a termination; if there is none, put 120 Ω across ${id} and ${other}.`,
          },
        ),
      ];
    const others = view
      .inRail(rails[0]!, 'differential-input')
      .filter((each) => each !== id && view.terminal(each)!.with !== null);
    const ended = [
      termination,
      ...others.flatMap((each) => (view.terminal(each)!.nature as DifferentialInput).termination ?? []),
    ];
    // Several receivers on one pair: only the last of them may end it.
    const together = 1 / ended.reduce((sum, each) => sum + 1 / each, 0);
    if (ended.length > 1 && together < 90)
      return [
        found(
          pairs,
          [id, other, one.id, two.id, ...others],
          'tight',
          `${ended.length} receivers on the pair ${name} each end it, ${ohms(together)} together: the output is loaded more than it is made for.`,
          {
            figures: [figure('termination, together', together, 'Ω')],
            source: SOURCE.curve,
            remedy: 'Leave the resistor at the far end of the cable only, and take off the others.',
          },
        ),
      ];
    const right = termination >= 90 && termination <= 150;
    return [
      found(
        pairs,
        [id, other, one.id, two.id],
        right ? 'fits' : 'tight',
        right
          ? `The pair ${name} is whole, the right way round and ended with ${ohms(termination)}.`
          : `The pair ${name} is ended with ${ohms(termination)}; 100 to 120 Ω are usual.`,
        {
          figures: [figure('termination', termination, 'Ω')],
          source: SOURCE.curve,
          remedy: right ? undefined : `Put 120 Ω across ${id} and ${other} instead.`,
        },
      ),
    ];
  },
};
