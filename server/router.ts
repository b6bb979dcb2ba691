/** Which route a path means. Paths are compared step by step, after decoding, so that nothing hides in a step. */
import { refusal } from './answer.ts';
import type { Answer, Method, Route } from './http.ts';

export interface Found {
  readonly route: Route;
  readonly at: Readonly<Record<string, string>>;
}

/** The steps of a path, decoded; undefined where it cannot be decoded. */
export function stepsOf(path: string): readonly string[] | undefined {
  try {
    return path.slice(1).split('/').map(decodeURIComponent);
  } catch {
    return undefined;
  }
}

/** The route, or a refusal: 404 for no such path, 405 for a path that does not do that. */
export function findRoute(
  routes: readonly Route[],
  method: string,
  steps: readonly string[],
): Found | Answer {
  const here: Method[] = [];
  for (const route of routes) {
    const at = match(route.path, steps);
    if (!at) continue;
    if (route.method === method) return { route, at };
    here.push(route.method);
  }
  if (here.length === 0)
    return refusal(
      404,
      'not-found',
      'Fettle has nothing at this address; docs/server.md lists what there is.',
    );
  const allowed = here.join(', ');
  return refusal(405, 'method-not-allowed', `This address takes ${here.join(' and ')} only.`, undefined, {
    allow: allowed,
  });
}

function match(pattern: string, steps: readonly string[]): Record<string, string> | undefined {
  const wanted = pattern.slice(1).split('/');
  if (wanted.length !== steps.length) return undefined;
  const at: Record<string, string> = {};
  for (const [index, want] of wanted.entries()) {
    const step = steps[index]!;
    if (want.startsWith(':')) {
      if (step === '') return undefined;
      at[want.slice(1)] = step;
    } else if (want !== step) return undefined;
  }
  return at;
}
