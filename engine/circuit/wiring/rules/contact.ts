import { drivesOf } from '../check/drive.ts';
import { figure, found, type Rule, verdictOf } from '../check/rule.ts';
import { amps, volts } from '../check/say.ts';
import type { Contact } from '../types.ts';

/** Share of a rating for resistors up to which coils are no question: common practice, no source. */
const COILS = 0.25;

/** What a contact switches, against what it is rated for. Asked at its first end. */
export const contactRating: Rule = {
  id: 'contact',
  title: 'Can the contact switch what it carries?',
  of: ['contact'],
  sums: true,
  judge: (view, id) => {
    const terminal = view.terminal(id)!;
    const nature = terminal.nature as Contact;
    const other = terminal.with;
    if (other === null || other < id) return [];
    const { sum, unknown, count } = view.total(`contact:${id}`);
    if (count === 0) return [];
    const source = [...drivesOf(view, id), ...drivesOf(view, other)].find(
      ({ how, high }) =>
        (how === 'fixed' && (high ?? 0) > 0) || how === 'ac' || how === 'sourcing' || how === 'push-pull',
    );
    if (!source) return [];
    const ac = source.how === 'ac';
    const rating = ac ? nature.ac : nature.dc;
    const kind = ac ? 'a.c.' : 'd.c.';
    const name = contactName(id, other);
    const other2 = ac ? nature.dc : nature.ac;
    if (!rating) {
      // What a relay takes troubles no contact that is sold for 24 V; say nothing of that.
      if (nature.role !== 'main' && unknown === 0 && sum < 0.1) return [];
      return [
        found(
          contactRating,
          [id, other],
          'unknown',
          other2
            ? `The contact ${name} is rated for ${ac ? 'd.c.' : 'a.c.'} only as far as is written, and it switches ${kind}: an a.c. rating says nothing of d.c.`
            : `What the contact ${name} may switch (${kind}) is not known.`,
          {
            needs: [`${id}.${ac ? 'ac' : 'dc'}-volts`, `${id}.${ac ? 'ac' : 'dc'}-amps`],
          },
        ),
      ];
    }
    const there = source.high;
    if (there !== undefined && there > rating.volts)
      return [
        found(
          contactRating,
          [id, other],
          'fails',
          `The contact ${name} breaks ${volts(rating.volts)} ${kind}, and ${volts(there)} lie across it when it opens: the arc stays.`,
          {
            margin: rating.volts / there,
            figures: [figure('there is', there, 'V'), figure('rated for', rating.volts, 'V')],
            source: 'rating of the contact',
            remedy: ac
              ? 'Take a contact for that voltage.'
              : 'Take a contact for that d.c. voltage, or put two of its contacts in series.',
          },
        ),
      ];
    const coils = view.total(`coils:${id}`).sum;
    if (
      nature.role !== 'main' &&
      rating.coilAmps === undefined &&
      rating.amps !== undefined &&
      coils > rating.amps * COILS
    )
      return [
        found(
          contactRating,
          [id, other],
          'unknown',
          `The contact ${name} switches coils of ${amps(coils)} ${kind}; it is rated for ${amps(rating.amps)} into resistors, and what it may switch into coils is not known. A coil keeps the arc alive: often a quarter or less is allowed.`,
          {
            figures: [figure('coils', coils, 'A'), figure('rated for resistors', rating.amps, 'A')],
            source: 'IEC 60947-5-1, utilisation categories AC-15 and DC-13; the quarter is common practice',
            needs: [`${id}.${ac ? 'ac' : 'dc'}-coil-amps`],
          },
        ),
      ];
    const can = rating.coilAmps ?? rating.amps;
    if (can === undefined) return [];
    const figures = [figure('carries', sum, 'A'), figure('rated for', can, 'A')];
    if (sum > can)
      return [
        found(
          contactRating,
          [id, other],
          'fails',
          `The contact ${name} may switch ${amps(can)} ${kind}, and carries ${amps(sum)}${unknown > 0 ? ' or more' : ''}.`,
          {
            margin: can / sum,
            figures,
            source: 'rating of the contact',
            remedy: 'Let it switch a contactor that carries the current.',
          },
        ),
      ];
    if (unknown > 0)
      return [
        found(
          contactRating,
          [id, other],
          'unknown',
          `The contact ${name} may switch ${amps(can)} ${kind}; of ${unknown} of ${count} loads behind it the current is not known.`,
          { figures },
        ),
      ];
    if (sum === 0) return [];
    return [
      found(
        contactRating,
        [id, other],
        verdictOf(can / sum),
        `The contact ${name} may switch ${amps(can)} ${kind} and carries ${amps(sum)}.`,
        {
          margin: can / sum,
          figures,
          source: 'rating of the contact',
          remedy: can / sum < 1.25 ? 'Let it switch a contactor that carries the current.' : undefined,
        },
      ),
    ];
  },
};

/** 'K1.9-10', the lower number first. */
function contactName(one: string, other: string): string {
  const marks = [one, other].map((id) => id.slice(id.indexOf('.') + 1));
  marks.sort((a, b) => a.localeCompare(b, 'en', { numeric: true }));
  return `${one.slice(0, one.indexOf('.'))}.${marks.join('-')}`;
}
