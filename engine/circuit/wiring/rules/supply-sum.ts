import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { amps, terminalName } from '../check/say.ts';
import type { Supply } from '../types.ts';

/** What is drawn from a supply for good, against what it can give. */
export const supplySum: Rule = {
  id: 'supply-current',
  title: 'Can the supply give what is drawn from it?',
  of: ['supply'],
  sums: true,
  judge: (view, id) => {
    const nature = view.terminal(id)!.nature as Supply;
    if (nature.pole !== 'plus') return [];
    const { sum, count, unknown } = view.total(`supply:${id}`);
    if (count === 0) return [];
    const name = terminalName(view, id);
    const can = nature.amps;
    const figures = [
      figure('drawn', sum, 'A'),
      ...(can === undefined ? [] : [figure('it can give', can, 'A')]),
    ];
    const of = `${count} ${count === 1 ? 'device draws' : 'devices draw'}`;
    if (can !== undefined && sum > can)
      return [
        found(
          supplySum,
          [id],
          'fails',
          `${of} ${amps(sum)}${unknown > 0 ? ' or more' : ''} from ${name}, which gives ${amps(can)}.`,
          {
            margin: can / sum,
            figures,
            remedy: 'Take a larger supply, or a second one with its own rail.',
          },
        ),
      ];
    if (unknown > 0 || can === undefined)
      return [
        found(
          supplySum,
          [id],
          'unknown',
          can === undefined
            ? `${of} ${sum > 0 ? `${amps(sum)}${unknown > 0 ? ' and more' : ''} ` : ''}from ${name}; what it can give is not known.`
            : `${of} from ${name}; of ${unknown} it is not known how much. Known are ${amps(sum)} of ${amps(can)}.`,
          { figures, ...(can === undefined ? { needs: [`${id}.current`] } : {}) },
        ),
      ];
    if (sum === 0) return [];
    const margin = can / sum;
    return [
      found(
        supplySum,
        [id],
        verdictOf(margin),
        `${of} ${amps(sum)} from ${name}, which gives ${amps(can)}.`,
        {
          margin,
          figures,
          remedy: margin < 1.25 ? 'Take the next larger one: a quarter in hand keeps it cool.' : undefined,
        },
      ),
    ];
  },
};
