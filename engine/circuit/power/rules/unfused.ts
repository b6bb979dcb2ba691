/** Wires between a source and the first fuse. */
import { andList } from '../../../quantity/words.ts';
import { lengthNeed } from '../../wiring/inside-length.ts';
import type { WiringFinding } from '../../wiring/types.ts';
import type { PowerContext } from '../context.ts';
import { amps, figure, finding, metres } from '../say.ts';
import type { Source } from '../sources.ts';
import { OVERLOAD } from './protection.ts';
import { NOTHING, type SupplyRule } from './rule.ts';
import { HOW_IT_LIES, thicker } from './wire-current.ts';

const SHORT_TAIL =
  'IEC 60204-1:2016, 7.2.8: up to 3 m from the source, laid so that it cannot short (recalled, check the standard)';
const TAIL_METRES = 3;

/** A drive or control that feeds its encoder limits that itself. */
const isInside = ({ wiring }: PowerContext, source: Source): boolean =>
  source.kind === 'supply' && source.limits && wiring.devices.get(source.device)?.kind !== 'supply';

/** Wires between a source and the first fuse. */
export const unfusedRule: SupplyRule = {
  id: 'unfused',
  of: 'wire',
  needs: 'nothing',
  judge: (context, subject) => {
    const found = unfused(context, subject);
    return found ? { findings: [found] } : NOTHING;
  },
};

function unfused(context: PowerContext, id: string): WiringFinding | undefined {
  const wire = context.wiring.wires.get(id);
  const guard = context.guards.wires.get(id);
  if (!wire || !guard || guard.passed.length > 0) return undefined;
  const source = context.flow.source.get(guard.source);
  if (!source || isInside(context, source)) return undefined;
  const about = [id, source.device];
  const title = `Wire ${id} without a fuse`;
  const capacity = context.capacity(wire);
  // The mains come first of all; of supplies side by side all give into a short circuit.
  const beside =
    source.kind === 'mains' ? [] : guard.beside.flatMap((each) => context.flow.source.get(each) ?? []);
  const all = [source, ...beside];
  const limit =
    source.kind === 'mains'
      ? (source.amps ?? context.settings.socketAmps)
      : all.some((each) => each.amps === undefined)
        ? undefined
        : all.reduce((sum, each) => sum + each.amps!, 0);
  const named = andList(all.map(({ device }) => device));
  if (source.kind === 'mains' || all.every((each) => each.limits)) {
    const what =
      source.kind === 'mains'
        ? 'the fuse before the machine lets'
        : `${named} can give${all.length > 1 ? ' together' : ''}`;
    const why =
      source.kind === 'mains'
        ? OVERLOAD
        : `${OVERLOAD}; a supply that limits its current protects what carries it (common practice)`;
    if (limit === undefined || capacity.worst === undefined) {
      return finding(
        'unfused',
        about,
        title,
        'unknown',
        `Wire ${id} has no fuse of its own; whether it carries what ${source.kind === 'mains' ? 'the fuse before the machine lets pass' : `${named} can give${all.length > 1 ? ' together' : ''}`} is not known.`,
        why,
        {
          needs: [
            ...(limit === undefined
              ? [
                  source.kind === 'mains'
                    ? 'settings.socket-amps'
                    : `${all.find((each) => each.amps === undefined)!.device}.current`,
                ]
              : []),
            ...(capacity.worst === undefined ? capacity.needs : []),
          ],
        },
      );
    }
    const margin = capacity.worst / limit;
    const figures = [
      figure('current that can come', limit, 'A'),
      figure('what the wire may carry at worst', capacity.worst, 'A'),
    ];
    if (margin >= 1) {
      return finding(
        'unfused',
        about,
        title,
        'fits',
        `Wire ${id} has no fuse of its own and needs none: ${what} ${amps(limit)}${source.kind === 'mains' ? ' pass' : ''}, and it may carry ${amps(capacity.worst)}.`,
        why,
        { margin, figures },
      );
    }
    const sure = capacity.best! < limit;
    return finding(
      'unfused',
      about,
      title,
      sure ? 'fails' : 'unknown',
      `Wire ${id} has no fuse of its own; ${what} ${amps(limit)}${source.kind === 'mains' ? ' pass' : ''}, and it may carry ${sure ? `${amps(capacity.best!)} at most` : `${amps(capacity.worst)} to ${amps(capacity.best!)}`}.`,
      why,
      {
        figures,
        remedy: sure
          ? `A fuse at its beginning, or a thicker wire. ${thicker(limit, capacity) ?? ''}`.trim()
          : HOW_IT_LIES,
        ...(sure ? { margin: capacity.best! / limit } : { needs: capacity.needs }),
      },
    );
  }
  const { device } = all.find((each) => !each.limits)!;
  const short = wire.length !== undefined && wire.length <= TAIL_METRES;
  return finding(
    'unfused',
    about,
    title,
    wire.length === undefined ? 'unknown' : short ? 'tight' : 'fails',
    `Wire ${id} hangs on ${device} without a fuse, and ${device} does not limit its current${wire.length === undefined ? '' : ` over ${metres(wire.length)}`}. ${wire.length === undefined ? 'Up to 3 m, laid so that it cannot chafe, such a tail is allowed; longer, it burns in a short circuit.' : short ? 'Short and laid so that it cannot chafe, such a tail is allowed up to 3 m.' : 'In a short circuit it burns.'}`,
    SHORT_TAIL,
    {
      remedy: `A fuse next to ${device}.`,
      needs: wire.length === undefined ? [lengthNeed(wire)] : undefined,
    },
  );
}
