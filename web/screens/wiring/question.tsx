/** What is alike is asked once and answered where it stands: a choice, yes or no, a number with its unit, words. */
import { type FormEvent, type ReactNode, useEffect, useId, useState } from 'react';
import { type AskedFact, exampleOf, specAt } from '../../../engine/circuit/whole/index.ts';
import type { AnswerPlace } from '../../../engine/circuit/wiring/index.ts';
import { askBackOfSetting } from '../../../engine/quantity/read-setting.ts';
import { capital } from '../../../engine/quantity/words.ts';
import type { Wiring } from '../../../engine/refit/types.ts';
import { AskBack, focusOn, useAskBack } from '../../parts/ask-back.tsx';
import { keepDraft, readDraft } from '../../state/drafts.ts';

/** An answer of one kind to all places it is asked at. */
export type Answers = readonly (readonly [place: AnswerPlace, typed: string])[];

interface Props {
  /** Named in the page, and kept while it is typed. */
  readonly id: string;
  readonly draft: string;
  readonly asks: string;
  readonly facts: readonly AskedFact[];
  /** What waits for it, in a sentence. */
  readonly says: string;
  /** With what is proposed, since a question may be about something that is not recorded yet. */
  readonly wiring: Wiring;
  /** It is recorded, and the wires are laid anew. */
  readonly isDone: boolean;
  /** What stands in the fields before anything is typed, by fact: what is taken as usual. */
  readonly start?: Readonly<Record<string, string>>;
  readonly verb?: string;
  /** What is wrong with it, in a sentence; undefined where it was recorded. */
  readonly answer: (answers: Answers) => Promise<string | undefined>;
  readonly children?: ReactNode;
}

export function QuestionForm(props: Props) {
  const { id, asks, facts, says, isDone, verb = 'Answer', wiring, answer, children } = props;
  const name = useId();
  const [texts, setText, forget] = useDrafts(props);
  const [fault, setFault] = useState<string>();
  const [only] = facts as [AskedFact, ...AskedFact[]];
  const isYesNo = facts.length === 1 && only.options?.length === 2 && only.options[0] === 'yes';
  const slipIn = (typed: Readonly<Record<string, string>>) => {
    for (const { setting, questions } of facts) {
      const spec = specAt(questions[0]!.place, wiring);
      const says = spec && askBackOfSetting(spec, typed[setting] ?? '');
      if (says !== undefined) return { setting, says };
    }
    return undefined;
  };
  const back = useAskBack((typed) => slipIn(JSON.parse(typed))?.says);
  const give = async (typed: Readonly<Record<string, string>>): Promise<void> => {
    const told = facts.filter(({ setting }) => (typed[setting] ?? '').trim() !== '');
    if (back.holds(JSON.stringify(typed))) {
      setFault(undefined);
      return;
    }
    // Of several facts one may be known and the others not yet.
    const wrong =
      told.length === 0
        ? `${asks} ${only.options ? 'Choose one of the answers.' : `Write it like ${likeOf(only, wiring)}.`}`
        : await answer(
            told.flatMap(({ setting, questions }) =>
              questions.map(({ place }) => [place, typed[setting]!] as const),
            ),
          );
    setFault(wrong);
    if (wrong === undefined) forget();
  };
  const submit = (event: FormEvent): void => {
    event.preventDefault();
    void give(texts);
  };
  const described = { 'aria-describedby': `${name}-said`, 'aria-invalid': fault !== undefined };
  const field = (fact: AskedFact) => (
    <AnswerField
      id={`${name}-${fact.setting}`}
      fact={fact}
      like={likeOf(fact, wiring)}
      text={texts[fact.setting] ?? ''}
      setText={(text) => {
        setText(fact.setting, text);
        back.drop();
      }}
      described={described}
    />
  );
  const button = (
    <button type="submit" disabled={isDone}>
      {verb}
    </button>
  );
  return (
    <li className="sheet" data-question={id}>
      <form onSubmit={submit} noValidate>
        {isYesNo ? (
          <fieldset className="row" {...described}>
            <legend>{asks}</legend>
            {only.options!.map((each) => (
              <button
                key={each}
                type="button"
                disabled={isDone}
                onClick={() => void give({ [only.setting]: each })}
              >
                {capital(each)}
              </button>
            ))}
          </fieldset>
        ) : facts.length === 1 ? (
          <>
            <label htmlFor={`${name}-${only.setting}`}>
              {asks} <UnitOf fact={only} />
            </label>
            <div className="row wiring-answer">
              {field(only)}
              {button}
            </div>
          </>
        ) : (
          <fieldset>
            <legend>{asks}</legend>
            {facts.map((fact) => (
              <div key={fact.setting} className="wiring-fact">
                <label htmlFor={`${name}-${fact.setting}`} className="small">
                  {capital(fact.name)} <UnitOf fact={fact} />
                </label>
                {field(fact)}
              </div>
            ))}
            {button}
          </fieldset>
        )}
        <AskBack
          id={`${name}-asked`}
          says={back.asked?.says}
          onAnyway={() => {
            back.allow(JSON.stringify(texts));
            void give(texts);
          }}
          onChange={() => focusOn(`${name}-${slipIn(texts)?.setting}`)}
        />
        <p id={`${name}-said`} className="small" aria-live="polite">
          {fault ? (
            <span className="bad">{fault}</span>
          ) : (
            <span className="soft">{isDone ? 'Recorded; the wires are laid anew.' : says}</span>
          )}
        </p>
      </form>
      {children}
    </li>
  );
}

const UnitOf = ({ fact: { unit } }: { fact: AskedFact }) =>
  unit && unit !== '1' ? <span className="small soft"> in {unit} or another unit</span> : null;

const likeOf = ({ questions, unit }: AskedFact, wiring: Wiring): string => {
  const spec = specAt(questions[0]!.place, wiring);
  return spec ? exampleOf(spec) : (unit ?? '');
};

function AnswerField({
  id,
  fact: { options },
  like,
  text,
  setText,
  described,
}: {
  id: string;
  fact: AskedFact;
  like: string;
  text: string;
  setText: (text: string) => void;
  described: { 'aria-describedby': string; 'aria-invalid': boolean };
}) {
  return options ? (
    <select id={id} value={text} onChange={(event) => setText(event.target.value)} {...described}>
      <option value="">not known yet</option>
      {options.map((each) => (
        <option key={each}>{each}</option>
      ))}
    </select>
  ) : (
    <input
      id={id}
      type="text"
      value={text}
      maxLength={120}
      autoComplete="off"
      spellCheck={false}
      placeholder={like === '' ? undefined : `like ${like}`}
      onChange={(event) => setText(event.target.value)}
      {...described}
    />
  );
}

/** What is typed survives a reload, each fact by itself. */
function useDrafts({ draft, facts, start = {} }: Props) {
  const at = (setting: string) => `${draft}.${setting}`;
  const read = () =>
    Object.fromEntries(facts.map(({ setting }) => [setting, readDraft(at(setting)) ?? start[setting] ?? '']));
  const [texts, setTexts] = useState<Readonly<Record<string, string>>>(read);
  // biome-ignore lint/correctness/useExhaustiveDependencies: another question, other drafts
  useEffect(() => setTexts(read()), [draft]);
  const set = (setting: string, text: string): void => {
    setTexts((before) => ({ ...before, [setting]: text }));
    keepDraft(at(setting), text === (start[setting] ?? '') ? undefined : text);
  };
  const forget = (): void => {
    for (const { setting } of facts) keepDraft(at(setting), undefined);
  };
  return [texts, set, forget] as const;
}
