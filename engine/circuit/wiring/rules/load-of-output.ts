import { drivesOf } from '../check/drive.ts';
import { figure, found, PRACTICE, type Rule, verdictOf } from '../check/rule.ts';
import { amps, terminalName } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Input, Load, Output } from '../types.ts';

/** What hangs on an output, against what it can give. */
export const loadOfOutput: Rule = {
  id: 'output-current',
  title: 'Can the output carry what hangs on it?',
  of: ['output'],
  judge: (view, id) => {
    const { stage, gives, swallows } = view.terminal(id)!.nature as Output;
    const rail = view.rail(id);
    if (!rail || view.inRail(rail, 'supply').length > 0) return [];
    const inputs = view.inRail(rail, 'input');
    const loads = view.inRail(rail, 'load');
    const pulls = stage === 'sourcing' ? [] : pullUps(view, id);
    const takers = [...inputs, ...loads, ...pulls.map(({ at }) => at)];
    if (takers.length === 0) return [];
    let asked = 0;
    const unknown: string[] = [];
    for (const { at, current } of pulls) {
      if (current === undefined) unknown.push(`${at}.resistance`);
      else asked += current;
    }
    for (const each of [...inputs, ...loads]) {
      const nature = view.terminal(each)!.nature as Input | Load;
      const current =
        nature.kind === 'load' ? nature.amps : (nature.current ?? (nature.form === 'logic' ? 0 : undefined));
      if (current === undefined) unknown.push(`${each}.current`);
      else asked += current;
    }
    const can = stage === 'sourcing' ? gives : stage === 'sinking' ? swallows : both(gives, swallows);
    const name = terminalName(view, id);
    const figures = [
      figure('asked', asked, 'mA'),
      ...(can === undefined ? [] : [figure('it can', can, 'mA')]),
    ];
    const needs = [
      ...(can === undefined ? [`${id}.${stage === 'sinking' ? 'swallows' : 'gives'}`] : []),
      ...unknown,
    ];
    if (asked === 0 && unknown.length === 0) return [];
    if (can !== undefined && asked > can)
      return [
        found(
          loadOfOutput,
          [id, ...takers],
          'fails',
          `${name} can carry ${amps(can)}, and what hangs on it asks ${amps(asked)}${unknown.length > 0 ? ' or more' : ''}.`,
          {
            margin: can / asked,
            figures,
            source: PRACTICE,
            remedy: 'Let it switch a small relay, and let the relay carry the current.',
          },
        ),
      ];
    if (needs.length > 0)
      return [
        found(
          loadOfOutput,
          [id, ...takers],
          'unknown',
          `It cannot be said whether ${name} carries what hangs on it: ${needs.length === 1 ? 'a current is' : `${needs.length} currents are`} not known.`,
          { figures, needs },
        ),
      ];
    const margin = can! / asked;
    return [
      found(
        loadOfOutput,
        [id, ...takers],
        verdictOf(margin),
        `${name} can carry ${amps(can!)}; what hangs on it asks ${amps(asked)}.`,
        {
          margin,
          figures,
          remedy: margin < 1.25 ? 'Spread what hangs on it over two outputs.' : undefined,
        },
      ),
    ];
  },
};

const both = (a: number | undefined, b: number | undefined): number | undefined =>
  a === undefined || b === undefined ? (a ?? b) : Math.min(a, b);

/** What comes down through resistors to a plus, and through those inside of inputs, while the output pulls low. */
function pullUps(
  view: View,
  id: string,
): readonly { readonly at: string; readonly current: number | undefined }[] {
  const rail = view.rail(id)!;
  const outside = view.inRail(rail, 'resistor').flatMap((end) => {
    const { nature, with: far } = view.terminal(end)!;
    const top =
      far === null ? undefined : drivesOf(view, far).find(({ how, ohms: on }) => how === 'fixed' && on === 0);
    if (nature.kind !== 'resistor' || !top?.high) return [];
    return [{ at: end, current: nature.ohms === undefined ? undefined : top.high / nature.ohms }];
  });
  const inside = view.inRail(rail, 'input').flatMap((end) => {
    const { nature } = view.terminal(end)!;
    return nature.kind === 'input' && nature.pull
      ? [{ at: end, current: nature.pull.to / nature.pull.ohms }]
      : [];
  });
  return [...outside, ...inside];
}
