import { render } from 'preact';
import { useState } from 'preact/hooks';
import '../../../src/ui/ui.css';
import type { Length } from '../../../src/job/length.ts';
import type { FrameTab } from '../../../src/ui/frame.tsx';
import {
  Button,
  ButtonRow,
  Caution,
  CheckField,
  ChoiceField,
  Frame,
  GateList,
  HoleStrip,
  JudgementTable,
  Keypad,
  LengthField,
  NumberField,
  PlanDrawing,
  Problem,
  PullRow,
  StrikeForm,
  TextField,
  VerdictMark,
} from '../../../src/ui/index.ts';
import type { Units } from '../../../src/units/index.ts';
import { livePulls, ring, ringPlace, STAKES } from './example.ts';

const nothing = () => {};

const tabs = (current: string, count: string): FrameTab[] =>
  ['Plan', 'Stake', 'Dig', 'Set', 'Pour', 'Record'].map((label) => ({
    label,
    href: `#${label}`,
    ...(label === current ? { current: true, count } : {}),
  }));

function StakeCard() {
  const holes = ring((n) => (n >= 1 && n <= 3 ? 'staked' : 'planned')).map((hole) => ({
    ...hole,
    live: hole.label === '4',
  }));
  return (
    <Frame
      name="Orchard yurt"
      jobsHref="#"
      save="saved"
      tabs={tabs('Stake', '3 of 11')}
      actions={
        <>
          <ButtonRow>
            <Button onPress={nothing}>Read back</Button>
            <Button onPress={nothing}>Later</Button>
          </ButtonRow>
          <Button kind="main" onPress={nothing}>
            Stake 4 driven
          </Button>
        </>
      }
    >
      <PlanDrawing
        title="Orchard yurt, hole 4"
        units="ft-in-16"
        stakes={STAKES}
        holes={holes}
        pulls={livePulls(4)}
      />
      <h2>Hole 4: drive a stake where both tapes meet</h2>
      <PullRow live from="from A’s nail" held="tape level" m={5.6467375} units="ft-in-16" />
      <PullRow live from="from B’s nail" held="tape level" m={3.4925} units="ft-in-16" />
      <p>Holes are on the far side of A–B. Good to 1/8″.</p>
    </Frame>
  );
}

function SetCard() {
  const verdicts = { '1': 'in', '2': 'in', '3': 'unsure', '4': 'out', P: 'in' } as const;
  const holes = ring((n) => (n <= 4 ? 'set' : 'dug')).map((hole) => {
    const verdict = verdicts[hole.label as keyof typeof verdicts];
    return {
      ...hole,
      ...(verdict ? { verdict, checked: hole.label !== '2' } : {}),
      ...(hole.label === '4'
        ? { nudge: { bearing: Math.PI * 1.08, words: 'Push post 4 5/8″ toward the pier.' } }
        : {}),
      ...(verdict ? { ellipse: { semiMajor: 0.004, semiMinor: 0.002, bearing: 0.6 } } : {}),
    };
  });
  return (
    <Frame
      name="Orchard yurt"
      jobsHref="#"
      save="saving"
      tabs={tabs('Set', '4 of 11')}
      toast={{ text: 'Post 4: plumb saved.', onUndo: nothing }}
      actions={
        <>
          <ButtonRow>
            <Button onPress={nothing}>Next pull</Button>
            <Button onPress={nothing}>Leave it so</Button>
          </ButtonRow>
          <Button kind="main" onPress={nothing}>
            Moved: measure again
          </Button>
        </>
      }
    >
      <h2>
        <VerdictMark verdict="out">Post 4 is out by 5/8″</VerdictMark>
      </h2>
      <p>Push its foot 5/8″ toward the pier. It is right when A reads 18′ 5 3/4″.</p>
      <PlanDrawing title="Orchard yurt, post 4" units="ft-in-16" stakes={STAKES} holes={holes} />
      <JudgementTable
        label="Post 4 against the plan"
        rows={[
          {
            name: 'place',
            tolerance: '± 1/2″',
            verdict: 'out',
            checked: true,
            text: 'out, 5/8″ ± 1/8″',
            why: 'The foot stands 5/8″ away from the pier. Push it in.',
          },
          {
            name: 'plumb',
            tolerance: '1/4″ in 10′',
            verdict: 'in',
            checked: true,
            text: 'in, 1/16″',
            why: '',
          },
          {
            name: 'top',
            tolerance: '± 1/8″',
            verdict: 'unsure',
            checked: false,
            text: 'unsure, 1/8″ ± 1/8″',
            why: 'Read the rod again.',
          },
          {
            name: 'spacing to 5',
            tolerance: '± 1/2″',
            verdict: 'unmeasured',
            checked: false,
            text: 'unmeasured',
            why: 'Pull from post 4 to post 5.',
          },
        ]}
      />
    </Frame>
  );
}

function Parts() {
  const [length, setLength] = useState<Length | null>({ m: 3.6576, typed: '12′', units: 'ft-in-16' });
  return (
    <Frame
      name="A long name for a job that wraps"
      jobsHref="#"
      save="failed"
      saveProblem="The reading A to stake 4 is NOT saved: free some space on the phone, then tap Save again."
      tabs={tabs('Plan', 'done')}
    >
      <p>
        <VerdictMark verdict="in" /> <VerdictMark verdict="in" checked={false} />{' '}
        <VerdictMark verdict="out" /> <VerdictMark verdict="out" checked={false} />{' '}
        <VerdictMark verdict="unsure" /> <VerdictMark verdict="unsure" checked={false} />{' '}
        <VerdictMark verdict="unmeasured" />
      </p>
      <HoleStrip
        label="Holes"
        onHole={nothing}
        holes={[
          { label: 'P', state: 'poured', verdict: 'in' },
          { label: '1', state: 'set', verdict: 'in', checked: false },
          { label: '2', state: 'set', verdict: 'out' },
          { label: '3', state: 'set', verdict: 'unsure' },
          { label: '4', state: 'set', verdict: 'unmeasured', current: true },
          { label: '5', state: 'dug' },
          { label: '6', state: 'staked' },
          { label: '7', state: 'planned' },
        ]}
      />
      <GateList
        label="Before concrete goes into hole 4"
        items={[
          { item: 'depth', green: true, text: 'Depth 48 1/2″, at least 48″ wanted.' },
          { item: 'position', green: false, text: 'Post 4 is out by 5/8″: push it toward the pier.' },
        ]}
      />
      <Caution title="Open holes">Cover every hole when you leave it.</Caution>
      <Problem text="Depth: “-3” must be more than zero; type it like 12′ 6 1/2″." />
      <LengthField
        label="Radius to the centres of the posts"
        value={length}
        units="ft-in-16"
        onChange={setLength}
        from="the example job"
      />
      <NumberField
        label="How many posts"
        value={10}
        min={3}
        max={200}
        whole
        onChange={nothing}
        suffix="posts"
      />
      <TextField label="Name of the job" value="Orchard yurt" maxLength={80} required onChange={nothing} />
      <ChoiceField
        label="Size is given as"
        value="centres"
        choices={[
          { value: 'centres', label: 'radius to centres' },
          { value: 'faces', label: 'circle through outer faces' },
          { value: 'flats', label: 'flat to flat' },
        ]}
        onChange={nothing}
      />
      <CheckField label="A pier in the middle" value onChange={nothing} hint="It stands free of the deck." />
      <ButtonRow>
        <Button kind="danger" onPress={nothing}>
          Strike it
        </Button>
        <Button disabled onPress={nothing}>
          Not yet
        </Button>
      </ButtonRow>
    </Frame>
  );
}

function Drawings() {
  const grid = Array.from({ length: 24 }, (_, i) => ({
    label: String(i + 1),
    place: { x: (i % 6) * 2.4, y: Math.floor(i / 6) * 2.4 },
    state: 'planned' as const,
    section: { kind: 'post' as const, width: 0.3, depth: 0.2 },
    facing: Math.PI / 2,
  }));
  const mirrored = ring((n) => (n <= 2 ? 'dug' : 'planned')).map((hole) => ({
    ...hole,
    place: { x: hole.place.x, y: -hole.place.y },
  }));
  return (
    <Frame name="Drawings">
      <PlanDrawing title="Shed" units="m" holes={grid} onHole={nothing} />
      <PlanDrawing title="On the right of A–B" units="mm" stakes={STAKES} holes={mirrored} />
      <PlanDrawing
        title="Check pulls"
        units="ft"
        stakes={STAKES}
        holes={ring(() => 'staked')}
        pulls={[
          { from: ringPlace(1), to: ringPlace(6), kind: 'check', words: '1 to 6' },
          { from: ringPlace(3), to: ringPlace(4), kind: 'live', words: '3 to 4' },
        ]}
      />
      <PlanDrawing
        title="Two near posts"
        units="ft-in-16"
        holes={grid.slice(0, 2).map((hole) => ({ ...hole, facing: 0.5 }))}
      />
    </Frame>
  );
}

const KEYPAD = {
  title: 'Tape from A to stake 4',
  hint: 'Nail of A to the nail in stake 4, tape level.',
  onClose: nothing,
  onDone: nothing,
  check: (m: number) => (m > 5.9 ? 'This is 1′ more than expected: read it again, or keep it?' : null),
};

function KeypadPage({ units }: { units: Units }) {
  return <Keypad {...KEYPAD} units={units} expected={5.6467375} />;
}

const PAGES = {
  stake: <StakeCard />,
  set: <SetCard />,
  parts: <Parts />,
  drawings: <Drawings />,
  strike: <StrikeForm what="A to stake 4: 18′ 6 5/16″" onStrike={nothing} onClose={nothing} />,
  'keypad-16': <KeypadPage units="ft-in-16" />,
  'keypad-32': <KeypadPage units="ft-in-32" />,
  'keypad-ft': <KeypadPage units="ft" />,
  'keypad-m': <KeypadPage units="m" />,
};

const page = new URLSearchParams(location.search).get('page') ?? 'stake';
const app = document.getElementById('app');
if (app) render(PAGES[page as keyof typeof PAGES], app);
