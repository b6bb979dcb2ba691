/** Whether the chuck holds the work against a cut. */
import type { Work } from '../refit/types.ts';
import type { Cut } from '../threads/index.ts';
import type { CutLink } from './cut-bends.ts';
import { missing, ratio, type WorkFinding } from './finding.ts';
import { from, type Known } from './known.ts';
import type { WorkMachine } from './machine.ts';
import { mm, rpm, say } from './say.ts';

/** Friction of jaws on steel: common practice, no source. */
const JAW_FRICTION: Readonly<Record<string, number>> = { smooth: 0.1, serrated: 0.25 };

export function gripFindings(
  machine: WorkMachine,
  work: Work,
  cut: Cut,
  torque: number,
  gripTyped: number | undefined,
  speed: number,
  links: CutLink[],
  bend: (key: string, there: number) => { depth?: number; feed?: number },
): readonly WorkFinding[] {
  const { chuck } = machine;
  const chain = machine.spindleChain ?? 'S';
  const of = { check: 'grip', link: 'chuck', title: 'Grip of the chuck' } as const;
  if (chuck.fitted === null)
    return [
      missing(work.id, {
        ...of,
        sentence: 'Which chuck holds the work is not known: it decides the speed and how hard may be cut.',
        needs: [`${chain}.chuck`],
      }),
    ];
  if (chuck.fitted === 'no' || chuck.type === 'holder') return [];
  const diameter = gripTyped ?? cut.given.find(({ key }) => key === 'D' || key === 'd')?.value ?? undefined;
  if (diameter === undefined) return [];
  const friction = chuck.surface === null ? null : (JAW_FRICTION[chuck.surface] ?? null);
  const thrown: Known =
    chuck.type === 'collet'
      ? { value: 0, needs: [] }
      : from([chuck.jaws, chuck.jawMass, chuck.jawRadius], (z, m, r) => z! * m! * r! * speed ** 2);
  const surface: Known =
    friction === null
      ? { value: null, needs: [`${chain}.chuck.jawSurface`] }
      : { value: friction, needs: [] };
  const { grip: ofGrip, gripCut: ofCut } = machine.habits;
  const needed = from(
    [thrown, surface],
    (F, mu) => ofGrip.value * ((ofCut.value * 2 * torque) / (mu! * diameter) + F!),
  );
  const needs = [...new Set([...needed.needs, ...chuck.grip.needs])];
  if (needed.value === null || chuck.grip.value === null)
    return [
      missing(work.id, { ...of, sentence: 'How hard the chuck grips at that speed is not known.', needs }),
    ];
  // The torque at which the grip is just enough.
  const most = Math.max(
    0,
    ((chuck.grip.value / ofGrip.value - thrown.value!) * friction! * diameter) / (2 * ofCut.value),
  );
  const key = cut.found.some((each) => each.key === 'Mc') ? 'Mc' : 'T';
  links.push({
    id: 'chuck',
    name: 'grip of the chuck',
    asked: needed.value,
    there: chuck.grip.value,
    unit: 'kN',
    margin: chuck.grip.value / needed.value,
    ...bend(key, most),
  });
  return [
    ratio(work.id, {
      ...of,
      asked: needed.value,
      there: chuck.grip.value,
      unit: 'kN',
      tight: 1,
      says: {
        fits: 'The cut and the jaws flying outwards ask {asked} of grip at rest; the chuck has {there}.',
        fails:
          'The cut and the jaws flying outwards ask {asked} of grip at rest, but the chuck has only {there}: the work slips or comes out. Cut less, or turn slower.',
      },
      because: [
        `Gripped at ⌀ ${mm(diameter)}, friction ${friction}, safety of the grip ${ofGrip.says}, of the cut ${ofCut.says}. At ${rpm(speed)} the jaws throw ${say(thrown.value!, 'kN')} outwards.`,
      ],
      basis: chuck.grip.basis,
    }),
  ];
}
