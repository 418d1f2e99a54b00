import { sideName, thingName, turningOf } from '../../job/words.ts';
import { type FaceAim, faceAims } from '../../judge/face-aims.ts';
import { type JobView, postOf } from '../../judge/view.ts';
import { capital } from '../../judge/words.ts';
import { readingOn } from '../../measure/index.ts';
import { Sheet } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { formatLength } from '../../units/index.ts';
import { fromWords } from './set-words.ts';

export interface FacesSheetProps {
  readonly view: JobView;
  readonly hole: string;
  readonly onClose: () => void;
}

/** What tapes, strings and the level read at each face of a post that stands on its mark. */
export function FacesSheet({ view, hole, onClose }: FacesSheetProps) {
  const sited = view.sited.get(hole);
  const aims = sited ? faceAims(view, sited) : [];
  const turning = turningOf(view.plan, hole);
  return (
    <Sheet title={`At each face of ${thingName(postOf(hole), view.plan)}`} onClose={onClose}>
      <p>
        What is read when it stands on its mark and plumb, by its actual section. Tapes level, each to the
        middle of the face.
      </p>
      {aims.map((aim) => (
        <section key={aim.side}>
          <h3>{capital(sideName(aim.side, turning))} face</h3>
          <ul class="record-list">
            {linesOf(view, aim).map((line) => (
              <li key={line}>{unbroken(line)}</li>
            ))}
          </ul>
        </section>
      ))}
    </Sheet>
  );
}

function linesOf(view: JobView, { tapes, strings, level }: FaceAim): string[] {
  const { plan } = view;
  const said = (m: number) => formatLength(m, plan.units);
  return [
    ...tapes.map(
      ({ from, expected }) => `Tape ${fromWords(from, plan)}: ${said(readingOn(view.inHand, expected))}`,
    ),
    ...strings.map(
      ({ from, to, station, offset, side }) =>
        `String ${thingName(from, plan)} to ${thingName(to, plan)}: ${said(offset)} off it on its ${side}, ${said(station)} along it`,
    ),
    ...(level ? [level.words] : []),
  ];
}
