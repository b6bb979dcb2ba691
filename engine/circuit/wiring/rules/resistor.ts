import { drivesOf } from '../check/drive.ts';
import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { ohms, watts } from '../check/say.ts';
import type { View } from '../check/view.ts';
import { ratingFor } from '../e-series.ts';
import { inputCurrent } from '../levels.ts';
import type { Resistor } from '../types.ts';

/** A pull-up, a series resistor, a bleeder: what it burns at worst, against what it stands. Asked at its first end. */
export const resistorPower: Rule = {
  id: 'resistor',
  title: 'Does the resistor stand the heat?',
  of: ['resistor'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const { ohms: own, watts: can } = terminal.nature as Resistor;
    const other = terminal.with;
    if (other === null || other < id) return [];
    if (view.wiresAt(id).length === 0 || view.wiresAt(other).length === 0) return [];
    const current =
      own === undefined ? undefined : (through(view, id, other, own) ?? through(view, other, id, own));
    if (own === undefined || current === undefined) return [];
    const burns = current * current * own;
    // What burns next to nothing is stood by every resistor that is sold.
    if (can === undefined && burns < 0.05) return [];
    const about = [id, other];
    const says = `${terminal.device} (${ohms(own)}) burns up to ${watts(burns)}`;
    if (can === undefined)
      return [
        found(resistorPower, about, 'unknown', `${says}; what it stands is not known.`, {
          figures: [figure('burns', burns, 'W')],
          needs: [`${id}.power`],
        }),
      ];
    const margin = burns > 0 ? Math.min(1e6, can / burns) : 1e6;
    return [
      found(
        resistorPower,
        about,
        // At its rating it is hot enough to burn what touches it: half of it is usual.
        verdictOf(margin, 2),
        `${says} and stands ${watts(can)}${margin >= 1 && margin < 2 ? ': it gets very hot' : ''}.`,
        {
          margin,
          figures: [figure('burns', burns, 'W'), figure('stands', can, 'W')],
          source: 'derived: I²R; twice the power in hand is common practice',
          remedy: margin < 2 ? `Take one of ${watts(ratingFor(burns))}.` : undefined,
        },
      ),
    ];
  },
};

/** The most current from one end to the other; undefined where it cannot be said that way round. */
function through(view: View, up: string, down: string, own: number): number | undefined {
  const held = (id: string) =>
    drivesOf(view, id).find(
      ({ how, ohms: on, path }) => how === 'fixed' && on === 0 && path.resistors.length === 0,
    );
  const [top, bottom] = [held(up), held(down)];
  const high = top?.top;
  if (high === undefined || high <= 0) return undefined;
  const rail = view.rail(down);
  if (!rail) return undefined;
  if (bottom?.high === 0 && bottom.against === top!.against) return high / own;
  // An output that pulls down takes the whole of it.
  const pulls = [...view.inRail(rail, 'output'), ...view.inRail(rail, 'differential-output')].length > 0;
  if (pulls) return high / own;
  for (const each of view.inRail(rail, 'input')) {
    const { nature } = view.terminal(each)!;
    if (nature.kind === 'input' && nature.series !== undefined)
      return inputCurrent({ forward: nature.forward ?? 0, series: nature.series }, high, own);
  }
  return undefined;
}
