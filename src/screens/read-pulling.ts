import type { Pulling } from '../job/entry-schema.ts';
import { type Length, lengthWords, typedLength } from '../job/length.ts';
import { shownIn } from '../job/pulling-words.ts';
import { readNumber } from '../ui/number-field.tsx';
import {
  forceScale,
  ok,
  type Result,
  refuse,
  type Scale,
  temperatureScale,
  type Units,
} from '../units/index.ts';

/** How a tape is pulled, as it stands in its fields: text, right or wrong; empty where it was not noted. */
export interface PullingTexts {
  readonly temperature: string;
  readonly tension: string;
  readonly spans: string;
}

export const PULLING_FIELDS = {
  temperature: 'Temperature of the tape',
  tension: 'Pulled with',
  spans: 'Lengths that hung free',
} as const;

/** Why each field cannot be read; null where it can. */
export type PullingFaults = { readonly [K in keyof PullingTexts]: string | null };

/** Bounds that the log has for them, °C and newtons. */
export const TEMPERATURES_C = { min: -40, max: 70 } as const;
export const TENSIONS_N = { min: 1, max: 500 } as const;

export function pullingTexts({ temperature, tension, spans = [] }: Pulling, units: Units): PullingTexts {
  const shown = (scale: Scale, si: number | undefined) =>
    si === undefined ? '' : String(shownIn(scale, si));
  return {
    temperature: shown(temperatureScale(units), temperature),
    tension: shown(forceScale(units), tension),
    spans: spans.map(lengthWords).join(' + '),
  };
}

/**
 * Reads how a tape is pulled out of its fields, all of them or nothing. What was left alone stays as it was to the last digit.
 *
 * @param before what the fields began with
 */
export function readPulling(
  texts: PullingTexts,
  units: Units,
  before: Pulling,
): { readonly pulling: Pulling } | { readonly faults: PullingFaults } {
  const same = pullingTexts(before, units);
  const number = (
    field: 'temperature' | 'tension',
    scale: Scale,
    bounds: typeof TEMPERATURES_C | typeof TENSIONS_N,
  ) =>
    texts[field] === same[field]
      ? ok(before[field])
      : readScaled(texts[field], PULLING_FIELDS[field], scale, bounds);
  const temperature = number('temperature', temperatureScale(units), TEMPERATURES_C);
  const tension = number('tension', forceScale(units), TENSIONS_N);
  const spans = texts.spans === same.spans ? ok([...(before.spans ?? [])]) : readSpans(texts.spans, units);
  if (!temperature.ok || !tension.ok || !spans.ok)
    return {
      faults: { temperature: faultOf(temperature), tension: faultOf(tension), spans: faultOf(spans) },
    };
  return {
    pulling: {
      ...(temperature.value === undefined ? {} : { temperature: temperature.value }),
      ...(tension.value === undefined ? {} : { tension: tension.value }),
      ...(spans.value.length === 0 ? {} : { spans: spans.value }),
    },
  };
}

export const faultOf = (result: Result<unknown>): string | null => (result.ok ? null : result.problem.text);

/** A number in the units of a scale; undefined when the field is empty. */
export function readScaled(
  text: string,
  field: string,
  scale: Scale,
  { min, max }: { readonly min: number; readonly max: number },
): Result<number | undefined> {
  if (text.trim() === '') return ok(undefined);
  const shown = readNumber(text, field, {
    min: Math.ceil(shownIn(scale, min)),
    max: Math.floor(shownIn(scale, max)),
  });
  return shown.ok ? ok(scale.toSI(shown.value)) : shown;
}

/** As many as the log takes. */
const MOST_SPANS = 20;

/** Lengths with a plus between them. */
function readSpans(text: string, units: Units): Result<Length[]> {
  if (text.trim() === '') return ok([]);
  const field = PULLING_FIELDS.spans;
  const parts = text.split('+');
  if (parts.length > MOST_SPANS)
    return refuse(field, `${field}: ${parts.length} are too many; type ${MOST_SPANS} or fewer.`);
  const read = parts.map((part) => typedLength(part, units, field));
  const wrong = read.find((one) => !one.ok);
  if (wrong && !wrong.ok) return wrong;
  return ok(read.flatMap((one) => (one.ok ? [one.value] : [])));
}
