import { useMemo, useState } from 'preact/hooks';
import type { Thing } from '../../job/entry-schema.ts';
import { thingName } from '../../job/words.ts';
import { stakeName } from '../../judge/moved-words.ts';
import { groundLinesOf } from '../../judge/situation.ts';
import { capital, listWords } from '../../judge/words.ts';
import { placeOf } from '../../plan/index.ts';
import {
  judgeReference,
  nextReferenceLabel,
  proposeReference,
  type ReferenceAsked,
  type ReferenceChoice,
} from '../../stakeout/index.ts';
import { Button, ButtonRow, ChoiceField, PlanDrawing, Problem, PullRow } from '../../ui/index.ts';
import { unbroken } from '../../ui/unbroken.ts';
import type { Units } from '../../units/index.ts';
import { drawnLine } from '../drawn-site.ts';
import { useJobBook } from '../job-book.ts';
import { levelTape } from '../rise-words.ts';
import { hrefOf } from '../route.ts';
import { useLog } from '../use-log.ts';
import { PlaceFields, type PlaceParts, placeIn, placeMissing, startPlace } from './place-fields.tsx';
import { placeWords, typedPlace } from './place-words.ts';
import { StakePage } from './stake-page.tsx';

/** Where a further stake or nail goes: as the tool would have it, or as the user says; and why it pays. */
export function FurtherPlaceCard({ onClose }: { readonly onClose: () => void }) {
  const { jobId, situation } = useJobBook();
  const { failed, log } = useLog();
  const { plan } = situation;
  const asked = useMemo(() => askedOf(situation), [situation]);
  const best = useMemo(() => (asked ? proposeReference(asked) : null), [asked]);
  const [kind, setKind] = useState<'stake' | 'nail'>('stake');
  const [own, setOwn] = useState<PlaceParts | null>(null);
  const [told, setTold] = useState(false);
  if (!plan || !asked) return null;
  const { units } = plan;
  const thing = { kind, label: nextReferenceLabel(kind, takenLabels(situation, kind)) } as const;
  const name = stakeName(thing);
  const parts = own ?? (best ? null : startPlace());
  const at = parts ? placeIn(parts) : best ? typedPlace(best, units) : null;
  const choice = at && judgeReference(placeOf(at), thingName(thing), asked);
  const use = async () => {
    setTold(at === null);
    if (!at || !(await log({ kind: 'reference', thing, at }))) return;
    location.hash = hrefOf({ at: 'job', job: jobId, phase: 'stake', hole: null });
    onClose();
  };
  return (
    <StakePage
      actions={
        <>
          {told && parts && <Problem text={placeMissing(capital(thingName(thing)), parts)} />}
          <ButtonRow>
            {best && (
              <Button onPress={() => setOwn(own ? null : startPlace())}>
                {own ? 'Take the proposal' : 'Another place'}
              </Button>
            )}
            <Button onPress={onClose}>Leave it</Button>
          </ButtonRow>
          <Button kind="main" onPress={() => void use()}>
            Use this place for {name}
          </Button>
        </>
      }
    >
      <h2>Where {name} goes</h2>
      {failed && <Problem text={`Place of ${name}: not saved; free some space, then tap again.`} />}
      {parts && <PlaceFields name={capital(thingName(thing))} units={units} parts={parts} onParts={setOwn} />}
      {choice && <Gives choice={choice} thing={thing} units={units} />}
      {!best && (
        <Problem text="No place within the tape of A and B is clear of the holes: say where it goes." />
      )}
      <ChoiceField
        label="What it is"
        value={kind}
        choices={[
          { value: 'stake', label: 'Stake' },
          { value: 'nail', label: 'Nail' },
        ]}
        onChange={setKind}
      />
    </StakePage>
  );
}

interface GivesProps {
  readonly choice: ReferenceChoice;
  readonly thing: Thing;
  readonly units: Units;
}

/** What a place gives: its tapes from A and B, what speaks against it, and why it pays. */
function Gives({ choice, thing, units }: GivesProps) {
  const { situation } = useJobBook();
  const name = stakeName(thing);
  const label = thing.kind === 'stake' || thing.kind === 'nail' ? thing.label : '';
  const { at, fromA, fromB, objections } = choice;
  return (
    <section aria-label="What this place gives">
      {objections.map((text) => (
        <Problem key={text} text={text} />
      ))}
      <PullRow live from="from A" to={`to ${name}`} {...levelTape(situation, fromA)} units={units} />
      <PullRow live from="from B" to={`to ${name}`} {...levelTape(situation, fromB)} units={units} />
      <p>{unbroken(`It stands ${placeWords({ right: at.x, front: at.y }, units)}.`)}</p>
      <PlanDrawing
        title={`${name} among the holes`}
        units={units}
        holes={situation.holes.map((hole) => ({ ...hole, state: 'planned' as const }))}
        {...(situation.site
          ? { stakes: { a: placeOf(situation.site.a), b: placeOf(situation.site.b) } }
          : {})}
        references={[{ label, place: at }]}
        lines={groundLinesOf(situation).lines.map((line) => drawnLine(line))}
      />
      <p>{paysWords(choice, situation.holes.length, name)}</p>
    </section>
  );
}

/** Why a further stake pays: it guards what two tapes leave open, and it tells which stake was knocked. */
function paysWords({ guards }: ReferenceChoice, holes: number, name: string): string {
  const which =
    guards.length === 0
      ? 'It guards no hole well from here.'
      : guards.length === holes
        ? 'A third tape from it shows a misread one at every hole.'
        : `A third tape from it shows a misread one at ${guards.length === 1 ? 'hole' : 'holes'} ${listWords(guards)}.`;
  return `${which} And when A–B reads otherwise one day, pulls to ${name} tell which stake was knocked, and where to drive it back.`;
}

type Situation = ReturnType<typeof useJobBook>['situation'];

function askedOf(situation: Situation): ReferenceAsked | null {
  const { plan, site, holes, entries, laid } = situation;
  if (!plan || !site || !laid || holes.length === 0) return null;
  const others = entries.flatMap(({ body }) => (body.kind === 'reference' ? [placeOf(body.at)] : []));
  return {
    a: placeOf(site.a),
    b: placeOf(site.b),
    others,
    holes,
    instruments: plan.instruments,
    units: plan.units,
    lines: groundLinesOf(situation).lines,
  };
}

/** Labels in use: meant to stand, standing, or pulled to. */
function takenLabels({ laid, measured }: Situation, kind: 'stake' | 'nail'): string[] {
  const things = [...(laid?.references ?? []), ...(measured?.points ?? [])].map(({ thing }) => thing);
  return things.flatMap((thing) => (thing.kind === kind ? [thing.label] : []));
}
