import { cross, distance, dot, type SitePoint, scale, subtract } from '../../../geometry/point.ts';
import type { Thing } from '../../../job/entry-schema.ts';
import { type JobView, pointOf, stakeOf, stands } from '../../../judge/view.ts';
import { moveWords } from '../../../judge/words.ts';
import { readingOn } from '../../../measure/index.ts';
import type { LaidString } from '../../../stakeout/string-types.ts';
import { Button, PullRow } from '../../../ui/index.ts';
import { heldWords } from '../../rise-words.ts';
import { nailThing } from './strings-of.ts';

export interface StringMarksProps {
  readonly view: JobView;
  readonly string: LaidString;
  /** Reads a hole's stake along the string, which is a tie; null while its nails are not both up. */
  readonly onRead: ((mark: { readonly hole: string; readonly at: number }) => void) | null;
}

/** Where each hole lies along the string, by its nails as measured; and by how much the string then passes it. */
export function StringMarks({ view, string, onRead }: StringMarksProps) {
  const { units } = view.plan;
  const ends = measuredEnds(view, string);
  const forCentres = string.standsFor.what === 'centres';
  return (
    <section aria-label="Marks along the string">
      {string.marks.map((mark) => {
        const found = ends && forCentres ? passing(view, mark.hole, ends) : null;
        const at = found?.at ?? mark.at;
        const mayRead =
          onRead && forCentres && stands(view, stakeOf(mark.hole)) && !view.dugHoles.has(mark.hole);
        return (
          <div key={mark.hole}>
            <PullRow
              live={onRead !== null}
              from={`${string.nails[0].label} to hole ${mark.hole}`}
              held={`along the string, ${heldWords(view, 'level')}`}
              m={readingOn(view.inHand, at)}
              units={units}
            />
            {found && found.words !== null && <p>{found.words}</p>}
            {mayRead && (
              <Button onPress={() => onRead({ hole: mark.hole, at })}>
                Read stake {mark.hole} along the string: a tie
              </Button>
            )}
          </div>
        );
      })}
    </section>
  );
}

type Ends = readonly [SitePoint, SitePoint];

/** Both nails where they were measured to stand; null while one of them is not. */
function measuredEnds(view: JobView, string: LaidString): Ends | null {
  const place = (thing: Thing) => pointOf(view, thing)?.fix?.place;
  const [one, other] = string.nails.map((nail) => place(nailThing(nail)));
  return one && other ? [one, other] : null;
}

/** A string that passes a centre by less lies over it, as far as tapes can tell: the thickness of a pencil. */
const OVER_IT = 0.003;

function passing(
  view: JobView,
  hole: string,
  [one, other]: Ends,
): { readonly at: number; readonly words: string | null } | null {
  const site = view.sited.get(hole)?.site;
  const run = distance(one, other);
  if (!site || run === 0) return null;
  const along = scale(subtract(other, one), 1 / run);
  const reach = subtract(site, one);
  const off = cross(along, reach);
  const at = dot(along, reach);
  if (Math.abs(off) <= OVER_IT) return { at, words: null };
  const move = { x: -along.y * off, y: along.x * off };
  return {
    at,
    words: `By its nails as measured the string misses the centre of hole ${hole}, which lies ${moveWords(site, move, view.ground)} of it.`,
  };
}
