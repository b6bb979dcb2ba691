/** Bench methods and their outcomes as JSON for scripts. */
import type { Method, Outcome, Taken } from '../../engine/evidence/index.ts';

export const methodsJson = (methods: readonly Method[]) => ({
  format: 'fettle-methods',
  version: 1,
  methods: methods.map(({ id, title, purpose, settles }) => ({ id, title, purpose, settles })),
});

/** Without what it runs. */
export function methodJson(method: Method) {
  const { run: _, ...described } = method;
  return { format: 'fettle-method', version: 1, ...described };
}

/** Values are SI. Degrees of freedom that have no end are left out. `recorded` are the paths of facts that were set. */
export function evidenceJson(
  { id, title }: Method,
  { given, readings, aside }: Taken,
  outcome: Outcome,
  recorded?: readonly string[],
) {
  const finite = (freedom: number): number | undefined => (Number.isFinite(freedom) ? freedom : undefined);
  return {
    format: 'fettle-evidence',
    version: 1,
    method: { id, title },
    given,
    readings,
    aside: aside.map((row) => row + 1),
    ...outcome,
    results: outcome.results.map((result) =>
      result.kind === 'choice'
        ? result
        : {
            ...result,
            freedom: finite(result.freedom),
            parts: result.parts.map((part) => ({ ...part, freedom: finite(part.freedom) })),
          },
    ),
    recorded,
  };
}
