/** The survey on paper: a block a part with blanks and units, auxiliaries, the old control's checklist, tags. */

import { AXIS_PLACES, PARTS, PLACES } from '../../parts/index.ts';
import { KEEPS, SKETCHES, type SurveyQuestion } from '../../parts/survey/index.ts';
import type { FactSpec } from '../../parts/types.ts';
import { preferred, type UnitSystem } from '../../quantity/index.ts';
import { own } from '../../quantity/own.ts';
import { raisePowers } from '../../quantity/superscripts.ts';
import { capital } from '../../quantity/words.ts';
import { sayFact } from '../say.ts';
import { type SurveyedItem, type SurveyedKeep, type SurveyedPart, surveyOf } from '../survey.ts';
import type { Fact, Part, Refit, Tag } from '../types.ts';
import { type Element, element, type Node } from './node.ts';

/** Chosen at a desk. Whatever else a part has is to be found at the machine: teeth, wheels, taps, what is set on it. */
const AT_A_DESK = new Set(['screw.loadFactor']);
/** Empty lines for tags that are still to be made. */
const EMPTY_TAGS = 18;

/** Everything to take to the machine, in the order of the walk. `system` decides the units of the blanks. */
export function surveySheets(refit: Refit, system: UnitSystem = 'mm'): Element {
  const { parts, items, keeps, tags } = surveyOf(refit);
  return element(
    'div',
    { class: 'survey-sheets' },
    head(refit),
    element('p', { class: 'care' }, CARE),
    keepList(keeps),
    section(
      'Part by part',
      parts.map((part) => partBlock(part, system)),
    ),
    section('The workshop', workshop(refit, system)),
    section(
      'What else moves, lights or pumps',
      items.filter(({ spec }) => spec.group === 'auxiliary').map((item) => itemBlock(item, system)),
    ),
    section(
      'How good the machine is',
      items.filter(({ spec }) => spec.group === 'mark').map((item) => itemBlock(item, system)),
    ),
    tagList(tags),
  );
}

const CARE =
  'Before a cover comes off: switch off at the main switch, lock it, wait ten minutes for capacitors, and try with a meter that it is dead. Let down oil and air pressure. Prop what can fall. Local rules and licensed trades come first.';

function head(refit: Refit): Element {
  return element(
    'header',
    {},
    element('h1', {}, `Survey: ${refit.name}`),
    element('div', { class: 'line' }, blank('surveyed by', 2), blank('date', 1), blank('sheets', 1)),
  );
}

const section = (title: string, blocks: readonly Node[]): Element | undefined =>
  blocks.length === 0 ? undefined : element('section', {}, element('h2', {}, title), blocks);

function partBlock({ at, place, part, toBuy }: SurveyedPart, system: UnitSystem): Element {
  const kind = PLACES[place as keyof typeof PLACES] ?? PARTS[part.kind];
  const chain = at.includes('.') ? at.split('.')[0]! : '';
  // With one spindle nobody asks which.
  const axis = Object.hasOwn(AXIS_PLACES, place)
    ? `${chain} axis, `
    : chain && chain !== 'S'
      ? `${chain}: `
      : '';
  const state = part.condition === 'unknown' ? 'not known' : part.condition;
  const title = `${axis}${kind?.name ?? part.kind}`;
  if (toBuy)
    return block(title, [element('p', { class: 'small' }, part.name), element('p', {}, TO_BUY)], undefined, [
      ticks(['it is here: works', 'worn', 'dead', 'not known'], undefined),
      notes(part.notes),
    ]);
  return block(
    title,
    [
      element('p', { class: 'small' }, part.name),
      ticks(['works', 'worn', 'dead', 'not known'], state),
      element('p', { class: 'ticks' }, tick('photo of the plate', (part.photos?.length ?? 0) > 0)),
    ],
    part.kind,
    [factBoxes(place, part, system), notes(part.notes)],
  );
}

const TO_BUY = 'To be bought, as far as is known: nothing to look at yet.';

/** The site is no part, but the walk passes its sockets and its door. */
function workshop(refit: Refit, system: UnitSystem): Element[] {
  const chosen = refit.places.site?.chosen;
  const part = chosen ? refit.parts[chosen] : undefined;
  return part
    ? [
        block(PLACES.site.name, [element('p', { class: 'small' }, part.name)], 'site', [
          factBoxes('site', part, system),
          notes(part.notes),
        ]),
      ]
    : [];
}

/** A box for everything that can be known of a part, but for prices and what is chosen at a desk. */
function factBoxes(place: string, { kind, facts }: Part, system: UnitSystem): Element {
  const specs = (PLACES[place as keyof typeof PLACES] ?? PARTS[kind])?.facts ?? {};
  return element(
    'div',
    { class: 'boxes' },
    Object.entries<FactSpec>(specs)
      .filter(
        ([name, spec]) =>
          !(spec.kind === 'text' && spec.of === 'money') && !AT_A_DESK.has(`${place}.${name}`),
      )
      // What is written stands together, what is ticked after it; in each, first what takes least trouble.
      .sort(([, a], [, b]) => rank(a) - rank(b) || a.trouble - b.trouble)
      .map(([name, spec]) => factBox(spec, facts[name], system)),
  );
}

const rank = ({ kind }: FactSpec): number => (kind === 'choice' || kind === 'choices' ? 1 : 0);

function factBox(spec: FactSpec, fact: Fact | undefined, system: UnitSystem): Element {
  const known = fact && raisePowers(sayFact(fact));
  switch (spec.kind) {
    case 'quantity':
      return box(spec.name, known, spec.unit === '1' ? 'no unit' : preferred(spec.unit, system));
    case 'curve':
      return box(`${spec.name} against ${spec.xName}`, known, `${spec.unit} at ${spec.xUnit}`);
    case 'text':
      return box(spec.name, known, '');
    case 'choice':
    case 'choices': {
      const value = fact?.value;
      const on = value?.kind === 'choice' ? [value.option] : value?.kind === 'choices' ? value.options : [];
      return choiceBox(spec.name, spec.options, on);
    }
  }
}

function itemBlock({ spec, found }: SurveyedItem, system: UnitSystem): Element {
  const state = found?.state;
  return block(
    spec.name,
    [
      spec.caution ? element('p', { class: 'care' }, spec.caution) : undefined,
      element('p', { class: 'small' }, spec.look),
      ticks(
        ['works', 'worn', 'dead', 'none here', 'not known'],
        state === 'none' ? 'none here' : state === 'unknown' ? 'not known' : state,
      ),
    ],
    spec.sketch,
    [
      element(
        'div',
        { class: 'boxes' },
        Object.entries(spec.questions).map(([id, question]) =>
          answerBox(question, found?.answers[id], system),
        ),
      ),
      notes(found?.note),
    ],
  );
}

function answerBox(question: SurveyQuestion, answer: string | undefined, system: UnitSystem): Element {
  const known = answer || undefined;
  if (question.kind === 'choice')
    return choiceBox(question.name, question.options, known === undefined ? [] : [known]);
  if (question.kind === 'text') return box(question.name, known, '', true);
  return box(question.name, known, question.unit === '1' ? 'how many' : preferred(question.unit, system));
}

function block(
  title: string,
  beside: readonly (Node | undefined)[],
  sketch: string | undefined,
  content: readonly (Node | undefined)[],
): Element {
  return element(
    'article',
    {},
    element(
      'div',
      { class: 'top-line' },
      element('div', {}, element('h3', {}, capital(title)), ...beside),
      sketch ? drawing(sketch) : undefined,
    ),
    ...content,
  );
}

function drawing(id: string): Element | undefined {
  const sketch = own(SKETCHES, id);
  return (
    sketch &&
    element(
      'svg',
      { viewBox: '0 0 200 120', role: 'img', 'aria-label': sketch.says },
      sketch.strokes.map((d) => element('path', { d })),
      sketch.labels.map(([x, y, text]) => element('text', { x: String(x), y: String(y) }, text)),
    )
  );
}

/** A blank with its unit; what is known already stands in it, small. */
const box = (name: string, known: string | undefined, unit: string, wide = false): Element =>
  element(
    'div',
    { class: wide ? 'box wide' : 'box' },
    element('span', { class: 'name' }, capital(name)),
    element('span', { class: 'known' }, known ?? ''),
    element('span', { class: 'unit' }, unit),
  );

const choiceBox = (name: string, options: Readonly<Record<string, string>>, on: readonly string[]): Element =>
  element(
    'div',
    { class: 'box wide' },
    element('span', { class: 'name' }, capital(name)),
    element(
      'span',
      { class: 'choices' },
      Object.entries(options).map(([id, words]) => tick(words, on.includes(id))),
    ),
  );

const tick = (words: string, on: boolean): Element =>
  element(
    'span',
    { class: on ? 'tick on' : 'tick' },
    element('span', { class: 'square', 'aria-hidden': 'true' }, on ? '✕' : ''),
    ` ${words}`,
    on ? element('span', { class: 'hidden' }, ' (ticked)') : undefined,
  );

const ticks = (words: readonly string[], on: string | undefined): Element =>
  element(
    'p',
    { class: 'ticks' },
    words.map((each) => tick(each, each === on)),
  );

const blank = (name: string, share: number): Element =>
  element('span', { class: `blank share-${share}` }, element('span', { class: 'name' }, capital(name)));

const notes = (text: string | undefined): Element =>
  element(
    'div',
    { class: 'box wide notes' },
    element('span', { class: 'name' }, 'Notes, and how each was found out'),
    element('span', { class: 'known' }, text ?? ''),
  );

function keepList(keeps: readonly SurveyedKeep[]): Element {
  const spec = new Map(KEEPS.map((each) => [each.id, each]));
  return element(
    'section',
    {},
    element('h2', {}, 'What to save from the old control, before anything is taken off'),
    element(
      'table',
      { class: 'keeps' },
      element('thead', {}, row('th', ['Kept', 'None', 'What', 'How', 'Where the copy is'])),
      element(
        'tbody',
        {},
        keeps.map(({ id, what, keep }) => {
          const { how = '', caution = '' } = spec.get(id) ?? {};
          return element(
            'tr',
            {},
            element('td', {}, tick('', keep?.state === 'kept')),
            element('td', {}, tick('', keep?.state === 'not-there')),
            element('td', {}, element('strong', {}, what)),
            element('td', {}, how, caution ? element('strong', {}, ` ${caution}`) : undefined),
            element('td', { class: 'write' }, keep?.note ?? ''),
          );
        }),
      ),
    ),
  );
}

const TAG_COLUMNS = [
  'Tag',
  'Cable',
  'Here (part, terminal)',
  'There',
  'Tag there',
  'Colour',
  'Signal',
  'Ends tagged',
];
const ENDS: Readonly<Record<Tag['state'], string>> = {
  untagged: 'none',
  'one-end': 'one',
  'both-ends': 'both',
};

function tagList(tags: readonly Tag[]): Element {
  return element(
    'section',
    {},
    element('h2', {}, 'Conductor ends: a tag on every end before it comes off'),
    element(
      'table',
      { class: 'tags' },
      element('thead', {}, row('th', TAG_COLUMNS)),
      element(
        'tbody',
        {},
        tags.map((tag) =>
          row('td', [
            tag.tag,
            tag.cable,
            tag.here,
            tag.there,
            tag.otherTag,
            tag.colour,
            tag.signal,
            ENDS[tag.state],
          ]),
        ),
        Array.from({ length: EMPTY_TAGS }, () =>
          row(
            'td',
            TAG_COLUMNS.map(() => ''),
          ),
        ),
      ),
    ),
  );
}

const row = (tag: 'th' | 'td', cells: readonly string[]): Element =>
  element(
    'tr',
    {},
    cells.map((text) => element(tag, tag === 'th' ? { scope: 'col' } : {}, text)),
  );
