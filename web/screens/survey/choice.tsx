/** One of a few, as large buttons under a thumb. */

interface Props<T extends string> {
  readonly legend: string;
  readonly options: Readonly<Record<T, string>>;
  readonly value: T | undefined;
  readonly onChoose: (value: T) => void;
}

export function Choice<T extends string>({ legend, options, value, onChoose }: Props<T>) {
  return (
    <fieldset className="survey-choice">
      <legend className="hidden">{legend}</legend>
      {Object.entries<string>(options).map(([option, words]) => (
        <button
          key={option}
          type="button"
          aria-pressed={value === option}
          onClick={() => onChoose(option as T)}
        >
          {words}
        </button>
      ))}
    </fieldset>
  );
}

export const CONDITIONS = {
  works: 'works',
  worn: 'worn',
  dead: 'dead',
  unknown: 'don’t know',
} as const;
