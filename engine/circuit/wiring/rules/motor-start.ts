import { BREAKER_SOURCE, INSTANT } from '../../../tables/breakers.ts';
import { figure, found, PRACTICE, type Rule } from '../check/rule.ts';
import { amps } from '../check/say.ts';
import type { View } from '../check/view.ts';
import type { Mains, Protection } from '../types.ts';
import { guardedMotor } from './motor-guard.ts';
import { START } from './motor-start-current.ts';

/** A breaker larger than this many times the current of a motor lets its winding overheat: common practice, no source. */
const OWN = 1.2;

/** More than this many contacts and fuses before a motor are no feed of a motor. */
const MOST = 24;

/** A motor takes several times its rated current for some tenths of a second: its breaker must sit that out. */
export const motorStart: Rule = {
  id: 'motor-start',
  title: 'Does the breaker let the motor start?',
  of: ['mains'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const { side, pole, amps: rated } = terminal.nature as Mains;
    // One line stands for all: they take the same.
    if (side !== 'takes' || pole !== 'L1' || view.device(terminal.device)?.kind !== 'mains-motor') return [];
    const at = breakerBefore(view, id);
    if (at === undefined) return [];
    const { device, nature } = view.terminal(at)!;
    const { amps: size, curve, form, release } = nature as Protection;
    if (form !== 'breaker') return [];
    if (release === 'thermal') return guardedMotor(view, id, at);
    const source = `${BREAKER_SOURCE.source}; ${START[0]} to ${START[1]} times the rated current at the start: ${PRACTICE}`;
    const about = [id, at, device];
    if (rated === undefined || size === undefined || (curve !== 'B' && curve !== 'C' && curve !== 'D')) {
      const needs = [
        ...(rated === undefined ? [`${id}.current`] : []),
        ...(size === undefined ? [`${at}.current`] : []),
        ...(curve === undefined ? [`${at}.curve`] : []),
      ];
      return [
        found(
          motorStart,
          about,
          'unknown',
          `${terminal.device} takes ${START[0]} to ${START[1]} times the current on its plate for some tenths of a second when it starts; whether ${device} sits that out cannot be said.`,
          { source, needs },
        ),
      ];
    }
    const [never, surely] = INSTANT[curve];
    const [least, most] = START.map((times) => times * rated) as [number, number];
    const margin = (never * size) / most;
    const verdict = surely * size < least ? 'fails' : margin < 1 ? 'tight' : 'fits';
    const start = `${terminal.device} takes ${amps(least)} to ${amps(most)} for some tenths of a second when it starts; ${device} (${curve}, ${amps(size)})`;
    return [
      found(
        motorStart,
        about,
        verdict,
        verdict === 'fits'
          ? `${start} lets ${amps(never * size)} pass for that long.${size > OWN * rated ? ` It guards the wires; the winding is guarded against overload by a motor circuit breaker set to ${amps(rated)}.` : ''}`
          : verdict === 'tight'
            ? `${start} may trip at once from ${amps(never * size)} on: it may go now and then at starting.`
            : `${start} trips at once from ${amps(surely * size)} on at the latest: the motor never starts.`,
        {
          source,
          margin,
          figures: [
            figure('at the start, at least', least, 'A'),
            figure('at the start, at most', most, 'A'),
            figure('never trips at once below', never * size, 'A'),
            figure('surely trips at once from', surely * size, 'A'),
          ],
          ...(verdict === 'fits'
            ? {}
            : {
                remedy: `A motor circuit breaker set to ${amps(rated)}, which also guards the winding, or a breaker with characteristic D; a larger rating only where the wires behind it carry that.`,
              }),
        },
      ),
    ];
  },
};

/**
 * An end of the fuse or breaker that feeds a motor, through contacts. Undefined where there is none of its own: where what it
 * hangs on is the mains of the whole machine, or is shared with other fuses.
 */
function breakerBefore(view: View, from: string): string | undefined {
  const seen = new Set<string>();
  const queue = [from];
  for (let at = queue.shift(); at !== undefined && seen.size < MOST; at = queue.shift()) {
    const net = view.net(at);
    if (!net) continue;
    const ends = view.inNet(net, 'protection').filter((end) => !seen.has(end));
    const form = (end: string) => (view.terminal(end)!.nature as Protection).form;
    const isTrunk =
      ends.some((end) => form(end) === 'switch') ||
      view.inNet(net, 'mains').some((end) => (view.terminal(end)!.nature as Mains).side === 'gives');
    if (isTrunk) return undefined;
    const guards = ends.filter((end) => form(end) === 'fuse' || form(end) === 'breaker');
    if (guards.length === 1) return guards[0];
    if (guards.length > 1) return undefined;
    for (const end of [...ends, ...view.inNet(net, 'contact')]) {
      const { with: far } = view.terminal(end)!;
      if (far === null || seen.has(end)) continue;
      seen.add(end).add(far);
      queue.push(far);
    }
  }
  return undefined;
}
