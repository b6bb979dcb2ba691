/** Load ≤ fuse ≤ wire; fuses for d.c. */

import { andList } from '../../../quantity/words.ts';
import { RATINGS } from '../../../tables/breakers.ts';
import { NEVER } from '../../wiring/rules/motor-guard.ts';
import type { Protection, Terminal, WiringFinding } from '../../wiring/types.ts';
import { FOR_GOOD } from '../bus-share.ts';
import type { PowerContext } from '../context.ts';
import { amps, byMargin, figure, finding, volts } from '../say.ts';
import type { Source } from '../sources.ts';
import { NOTHING, type SupplyRule } from './rule.ts';
import { HOW_IT_LIES, thicker } from './wire-current.ts';

export const OVERLOAD =
  'IEC 60364-4-43, 433.1 as quoted in a trade article: load ≤ fuse ≤ wire; IEC 60204-1:2016, 7.2';

const LOAD = `${OVERLOAD}; ${FOR_GOOD}`;

type Guarding = Terminal & { readonly nature: Protection };

/**
 * The end of a pole that looks towards the source; undefined of one that nothing hangs behind.
 *
 * @param one either end
 */
export function guardingEnd({ wiring, guards }: PowerContext, one: string): Guarding | undefined {
  const other = wiring.terminals.get(one)?.with;
  if (!other) return undefined;
  for (const [end, behind] of [
    [one, other],
    [other, one],
  ] as const)
    if (guards.terminals.get(behind)?.passed.at(-1) === end) return wiring.terminals.get(end) as Guarding;
  return undefined;
}

export const fusesRule: SupplyRule = {
  id: 'fuse',
  of: 'fuse',
  needs: 'currents',
  judge: (context, subject) => {
    const terminal = guardingEnd(context, subject);
    const guard = terminal && context.guards.terminals.get(terminal.id);
    const source = guard && context.flow.source.get(guard.source);
    if (!terminal || !source) return NOTHING;
    return {
      findings: [
        againstLoad(context, terminal),
        ...againstWires(context, terminal, context.wiresBehind(terminal.id)),
        ...forDirectCurrent(terminal, source),
        ...forShortCircuit(context, terminal, source),
      ],
    };
  },
};

const called = (terminal: Guarding): string =>
  `${terminal.nature.form === 'fuse' ? 'Fuse' : terminal.nature.release ? 'Motor circuit breaker' : 'Breaker'} ${terminal.device}`;

function againstLoad({ flow }: PowerContext, terminal: Guarding): WiringFinding {
  const { amps: rated, release } = terminal.nature;
  const current = flow.pairs.get(terminal.id) ?? { amps: 0, needs: [] };
  const about = [terminal.id, terminal.device];
  const title = `${called(terminal)} and its load`;
  if (rated === undefined)
    return finding(
      'fuse-load',
      about,
      title,
      'unknown',
      `${called(terminal)} carries ${amps(current.amps)}; what is printed on it has not been said.`,
      LOAD,
      {
        figures: [figure('current it carries for good', current.amps, 'A')],
        needs: [`${terminal.device}.amps`],
        remedy: release ? 'Set it to the current on the plate of its motor.' : sizeFor(current.amps),
      },
    );
  const figures = [
    figure('current it carries for good', current.amps, 'A'),
    figure(release ? 'set to' : 'rated current', rated, 'A'),
  ];
  // A dial is set to the current itself, and lets a little more pass for good.
  const margin = current.amps > 0 ? (rated * (release ? NEVER : 1)) / current.amps : undefined;
  if (margin !== undefined && margin < 1)
    return finding(
      'fuse-load',
      about,
      title,
      'fails',
      `${called(terminal)} of ${amps(rated)} carries ${amps(current.amps)}${current.needs.length > 0 ? ' or more' : ''}: it will go.`,
      LOAD,
      {
        margin,
        figures,
        remedy: release
          ? `Set it to the current on the plate of its motor; what hangs behind it besides wants a breaker of its own.`
          : sizeFor(current.amps),
      },
    );
  if (current.needs.length > 0)
    return finding(
      'fuse-load',
      about,
      title,
      'unknown',
      `${called(terminal)} of ${amps(rated)} carries ${amps(current.amps)}, and what hangs behind it besides has not been said.`,
      LOAD,
      { figures, needs: current.needs },
    );
  return finding(
    'fuse-load',
    about,
    title,
    margin === undefined || release ? 'fits' : byMargin(margin),
    `${called(terminal)} of ${amps(rated)} carries ${amps(current.amps)} for good.`,
    LOAD,
    { margin, figures },
  );
}

/** The next rating sold with a quarter in hand. */
export function sizeFor(load: number): string | undefined {
  const size = RATINGS.find((each) => each >= load * 1.25);
  return load > 0 && size !== undefined
    ? `${size} A has a quarter in hand (habit); the wires behind it must carry that.`
    : undefined;
}

function againstWires(
  context: PowerContext,
  terminal: Guarding,
  wires: readonly string[],
): readonly WiringFinding[] {
  const { amps: rated } = terminal.nature;
  if (rated === undefined || wires.length === 0) return [];
  const about = [terminal.id, terminal.device];
  const title = `${called(terminal)} and the wires behind it`;
  const each = wires.map((id) => ({ id, ...context.capacity(context.wiring.wires.get(id)!) }));
  const weak = (of: 'worst' | 'best') =>
    each.filter((one) => one[of] !== undefined).sort((a, b) => a[of]! - b[of]!)[0];
  const best = weak('best');
  const worst = weak('worst');
  const unsaid = each.filter((one) => one.worst === undefined);
  if (best?.best !== undefined && best.best < rated)
    return [
      finding(
        'fuse-wire',
        about,
        title,
        'fails',
        `${called(terminal)} lets ${amps(rated)} pass for good; wire ${best.id} behind it may carry ${amps(best.best)} at most. The wire would burn before it goes.`,
        `${OVERLOAD}; ${best.source}`,
        {
          margin: best.best / rated,
          figures: [figure('rated current', rated, 'A'), figure(`wire ${best.id} may carry`, best.best, 'A')],
          remedy: `A smaller one, or a thicker wire ${best.id}. ${thicker(rated, best) ?? ''}`.trim(),
        },
      ),
    ];
  if (unsaid.length > 0)
    return [
      finding(
        'fuse-wire',
        about,
        title,
        'unknown',
        `${called(terminal)} protects ${andList(unsaid.map(({ id }) => `wire ${id}`).slice(0, 4))}${unsaid.length > 4 ? ' and others' : ''}; how thick that is has not been said.`,
        OVERLOAD,
        {
          needs: unsaid.flatMap(({ needs }) => needs),
        },
      ),
    ];
  const margin = worst!.worst! / rated;
  const figures = [
    figure('rated current', rated, 'A'),
    figure(`weakest wire behind it, ${worst!.id}, may carry`, worst!.worst!, 'A'),
  ];
  if (margin >= 1)
    return [
      // Standard pairs of fuse and wire leave no more than a few parts in a hundred; the rule has its own reserve.
      finding(
        'fuse-wire',
        about,
        title,
        'fits',
        `${called(terminal)} of ${amps(rated)} goes before its wires suffer: the weakest, ${worst!.id}, may carry ${amps(worst!.worst!)}.`,
        `${OVERLOAD}; ${worst!.source}`,
        { margin, figures },
      ),
    ];
  return [
    finding(
      'fuse-wire',
      about,
      title,
      worst!.needs.length > 0 ? 'unknown' : 'fails',
      `${called(terminal)} lets ${amps(rated)} pass for good; wire ${worst!.id} may carry ${amps(worst!.worst!)}${worst!.needs.length > 0 ? ' at worst' : ''}.`,
      `${OVERLOAD}; ${worst!.source}`,
      {
        figures,
        needs: worst!.needs,
        remedy: worst!.needs.length > 0 ? HOW_IT_LIES : thicker(rated, worst!),
        ...(worst!.needs.length > 0 ? {} : { margin }),
      },
    ),
  ];
}

function forDirectCurrent(terminal: Guarding, source: Source): readonly WiringFinding[] {
  if (source.ac) return [];
  const { dcVolts, form } = terminal.nature;
  const about = [terminal.id, terminal.device];
  const title = `${called(terminal)} on d.c.`;
  const why = 'IEC 60947-2 and IEC 60269: only the d.c. voltage printed on it counts (from memory)';
  // Fuses for 24 V are common; an arc at more than that does not go out by itself.
  if (dcVolts === undefined)
    return (source.volts ?? 0) > 30 || form === 'breaker'
      ? [
          finding(
            'fuse-dc',
            about,
            title,
            'unknown',
            `${called(terminal)} stands in a d.c. circuit${source.volts === undefined ? '' : ` of ${volts(source.volts)}`}. One made for a.c. alone may not put out the arc: look for a d.c. voltage on it.`,
            why,
            { needs: [`${terminal.device}.dc-volts`] },
          ),
        ]
      : [];
  if (source.volts === undefined) return [];
  const margin = dcVolts / source.volts;
  return [
    finding(
      'fuse-dc',
      about,
      title,
      byMargin(margin, 1),
      `${called(terminal)} breaks ${volts(dcVolts)} d.c.; it stands in a circuit of ${volts(source.volts)}.`,
      why,
      {
        margin,
        figures: [
          figure('d.c. voltage it breaks', dcVolts, 'V'),
          figure('voltage of its circuit', source.volts, 'V'),
        ],
        remedy: margin < 1 ? 'Take one with a d.c. voltage above that of the circuit.' : undefined,
      },
    ),
  ];
}

/** Only where somebody has said how much the mains can give. */
function forShortCircuit(
  { settings }: PowerContext,
  terminal: Guarding,
  source: Source,
): readonly WiringFinding[] {
  const { shortCircuit } = settings;
  if (shortCircuit === undefined || source.kind !== 'mains') return [];
  const { breaks } = terminal.nature;
  const about = [terminal.id, terminal.device];
  const title = `${called(terminal)} and a short circuit`;
  const why = 'IEC 60364-4-43, 434.5.1 (from memory): what protects must be able to break what can flow';
  const figures = [figure('short-circuit current of the mains', shortCircuit, 'A')];
  if (breaks === undefined)
    return [
      finding(
        'fuse-breaks',
        about,
        title,
        'unknown',
        `The mains can drive ${amps(shortCircuit)} through a short circuit; how much ${called(terminal)} can break has not been said. It is printed on it in a box (6000), or stands on its sheet (Icu).`,
        why,
        { figures, needs: [`${terminal.device}.breaks`] },
      ),
    ];
  const margin = breaks / shortCircuit;
  return [
    finding(
      'fuse-breaks',
      about,
      title,
      byMargin(margin, 1),
      `${called(terminal)} breaks up to ${amps(breaks)}; the mains can drive ${amps(shortCircuit)} through a short circuit.`,
      why,
      {
        margin,
        figures: [...figures, figure('it breaks up to', breaks, 'A')],
        remedy:
          margin < 1
            ? 'Take one that breaks more, or a fuse before it that its maker names for it as back-up.'
            : undefined,
      },
    ),
  ];
}
