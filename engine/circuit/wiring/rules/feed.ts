import { type Drive, drivesOf } from '../check/drive.ts';
import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { terminalName, volts } from '../check/say.ts';
import type { Feed, WiringFinding } from '../types.ts';

/** A device fed with d.c., asked at its plus. */
export const feed: Rule = {
  id: 'feed',
  title: 'Is the device fed with the right voltage?',
  of: ['feed'],
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const nature = terminal.nature as Feed;
    const back = terminal.with;
    if (nature.pole !== 'plus' || back === null || view.wiresAt(id).length === 0) return [];
    const name = `${terminal.device} (${terminal.name})`;
    const plus = drivesOf(view, id);
    const minus = drivesOf(view, back);
    const ac = [...plus, ...minus].find(({ how }) => how === 'ac');
    if (ac)
      return [
        found(
          feed,
          [id, ac.path.source],
          'fails',
          `${name} wants d.c., and mains or a.c. reach it from ${terminalName(view, ac.path.source)}.`,
          {
            remedy: 'A d.c. supply belongs between.',
          },
        ),
      ];
    const up = plus.find(isHeld);
    const down = minus.find(isHeld);
    if (!up || !down) {
      const dead = !up ? id : back;
      return [
        found(feed, [id, back], 'fails', `${name} gets no current: from ${dead} no supply is reached.`, {
          remedy: `Connect ${dead} to ${dead === id ? 'plus' : '0 V'} of its supply.`,
        }),
      ];
    }
    for (const path of [up.path, down.path])
      for (const contact of path.contacts) view.give({ to: `contact:${contact}`, amps: nature.amps });
    if (nature.role === 'logic') view.give({ to: `supply:${up.path.source}`, amps: nature.amps });
    if ((up.high ?? 1) === 0 && (down.high ?? 0) > 0)
      return [
        found(
          feed,
          [id, back, up.path.source],
          'fails',
          `${name} is fed the wrong way round: its plus is at minus. Many devices die of that at once.`,
          {
            remedy: `Exchange ${id} and ${back}.`,
          },
        ),
      ];
    if (up.against === undefined || up.against !== down.against)
      return [
        found(
          feed,
          [id, back, up.path.source, down.path.source],
          'fails',
          `Plus of ${name} comes from ${up.path.source} and its minus goes to ${down.path.source}, and these two supplies have no 0 V in common: no current flows.`,
          {
            remedy: 'Take both poles of the same supply.',
          },
        ),
      ];
    return voltage(id, nature, name, up);
  },
};

const isHeld = (drive: Drive): boolean => drive.how === 'fixed';

function voltage(id: string, nature: Feed, name: string, up: Drive): readonly WiringFinding[] {
  const { volts: wanted } = nature;
  const least = nature.least ?? (wanted === undefined ? undefined : wanted * 0.9);
  const most = nature.most ?? (wanted === undefined ? undefined : wanted * 1.1);
  const about = [id, up.path.source, ...up.path.contacts];
  if (up.high === undefined || up.least === undefined || up.top === undefined)
    return [
      found(feed, about, 'unknown', `${name} is fed from ${up.path.source}, whose voltage is not known.`, {
        needs: [`${up.path.source}.volts`],
      }),
    ];
  if (least === undefined && most === undefined)
    return [
      found(feed, about, 'unknown', `${name} gets ${volts(up.high)}; what it wants is not known.`, {
        needs: [`${id}.volts`],
      }),
    ];
  const figures = [
    figure('it gets at least', up.least, 'V'),
    figure('it gets at most', up.top, 'V'),
    ...(least === undefined ? [] : [figure('it needs at least', least, 'V')]),
    ...(most === undefined ? [] : [figure('it stands at most', most, 'V')]),
  ];
  const over = most === undefined ? Number.POSITIVE_INFINITY : most / up.top;
  const under = least === undefined || least === 0 ? Number.POSITIVE_INFINITY : up.least / least;
  const margin = Math.min(over, under);
  const range =
    least === undefined
      ? `at most ${volts(most!)}`
      : most === undefined
        ? `at least ${volts(least)}`
        : `${volts(least)} to ${volts(most)}`;
  return [
    found(
      feed,
      about,
      verdictOf(margin, 1),
      margin >= 1
        ? `${name} is fed with ${volts(up.high)} from ${up.path.source}; it takes ${range}.`
        : over < 1
          ? `${name} gets up to ${volts(up.top)} from ${up.path.source} and stands ${volts(most!)}.`
          : `${name} gets ${volts(up.least)} from ${up.path.source} at worst and needs ${volts(least!)}.`,
      {
        margin,
        figures,
        source: 'rating of the device',
        remedy: margin >= 1 ? undefined : 'Feed it from a supply of its voltage.',
      },
    ),
  ];
}
