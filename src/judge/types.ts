import type { SitePoint, Vec } from '../geometry/point.ts';
import type { Check, HeightPoint, PullEnd, Side, Thing } from '../job/entry-schema.ts';
import type { Covariance, Ellipse, GlobalTest } from '../measure/types.ts';

export type Verdict = 'in' | 'out' | 'unsure' | 'unmeasured';
export type Quantity =
  | 'position'
  | 'spacing'
  | 'plumb'
  | 'twist'
  | 'level'
  | 'tops'
  | 'depth'
  | 'width'
  | 'room';

/** One quantity of one thing held against its tolerance. */
export interface Judgement {
  readonly quantity: Quantity;
  readonly verdict: Verdict;
  /** Chance that it is within tolerance, 0 to 1; null when unmeasured. */
  readonly chance: number | null;
  /** How far from the plan: metres, metres per metre for plumb, radians for a twist; null when unmeasured. */
  readonly error: number | null;
  /** 95 % half-width of `error`, same unit; null when unmeasured. */
  readonly uncertainty: number | null;
  readonly tolerance: number;
  /** False: no spare reading guards it, so one misreading would move it unseen. Never true of what is unmeasured. */
  readonly checked: boolean;
  /** Short, for a table cell: `out, 5/8″ ± 1/8″`. */
  readonly text: string;
  /** For everything that is not `in` and checked: why, and what to do, in whole sentences. Empty otherwise. */
  readonly why: string;
}

/** How to bring a loose post to its mark. */
export interface Nudge {
  readonly distance: number;
  /** Radians anticlockwise from the site's +x. */
  readonly bearing: number;
  /** `Push the foot of post 4: 5/8″ toward the pier.` */
  readonly words: string;
  /** What is there between the ends when it is right, metres; a tape of its own corrections reads what `readingOn` says. */
  readonly readings: readonly { readonly from: PullEnd; readonly to: PullEnd; readonly reading: number }[];
  /** What the level reads on two faces when it is right: a foot that is pushed takes the plumb with it. None of a pier. */
  readonly levels: readonly LevelReading[];
  /** Out; or unsure, and a push is likely to settle it or to bring it in. */
  readonly worthIt: boolean;
}

/** What a level held on one face shows. */
export interface LevelReading {
  readonly side: Side;
  /** Length of the level, metres. */
  readonly over: number;
  /** Gap that brings the bubble to the middle once the post is right, metres: 0, but for a level that is out of true. */
  readonly gap: number;
  /** As measured, out positive, metres; null where the lean is not known. */
  readonly now: number | null;
  /** `Level on the outer face: bubble in the middle, no gap over 4′ 0″; now the top leans 1/4″ out`. */
  readonly words: string;
}

/** How to bring a loose post upright. */
export interface PlumbNudge {
  /** How far the top goes, `over` above the foot of the level; metres. */
  readonly distance: number;
  readonly over: number;
  /** Radians anticlockwise from the site's +x. */
  readonly bearing: number;
  /** `Push the top of post 4: 1/4″ toward the pier, measured 4′ 0″ above the foot of the level.` */
  readonly words: string;
  readonly levels: readonly LevelReading[];
  /** As of a nudge. */
  readonly worthIt: boolean;
}

export interface GateItem {
  readonly item:
    | Quantity
    | Check
    | 'staked'
    | 'baseline'
    | 'dug'
    | 'obstruction'
    | 'shallower'
    | 'set'
    | 'checked'
    | 'bought';
  /** Which of the job's own items, where `item` is `asked`. */
  readonly asked?: string;
  /** It was measured, and is wrong: no tick mends it. */
  readonly measured?: true;
  /** It waits for a decision by whoever is responsible: no tick and no reading mends it. */
  readonly decision?: true;
  readonly green: boolean;
  /** What is so, or what is missing and what to do. */
  readonly text: string;
  /** It was ticked, and does not count any more. */
  readonly stale?: true;
}

export interface Gate {
  readonly open: boolean;
  readonly items: readonly GateItem[];
}

/** Where the middle of a dug hole lies, and what that leaves round the post, pier or tube at its mark. */
export interface DugMiddle {
  readonly at: AssessedPlace;
  /** From where what it holds stands, or is to stand, to the hole's own middle, metres, with its 95 % half-width. */
  readonly drift: number;
  readonly uncertainty: number;
  /** From the hole's outline to what it holds at the tightest, metres; negative where that does not go in. */
  readonly cover: number;
  readonly least: number;
  /** `fits`; `shave`, a side has to be taken back first; `decision`, it stands too far off the middle of its footing. */
  readonly told: 'fits' | 'shave' | 'decision';
  /** In whole sentences: the drift, and what comes of it. */
  readonly words: string;
  /** How much to take off, metres, from which side; null where it fits. */
  readonly shave: { readonly by: number; readonly words: string } | null;
}

export interface AssessedPlace {
  readonly place: SitePoint;
  readonly covariance: Covariance;
  readonly ellipse: Ellipse;
}

export interface HoleAssessment {
  readonly hole: string;
  readonly designed: SitePoint | null;
  readonly staked: {
    readonly driven: boolean;
    readonly at: AssessedPlace | null;
    readonly position: Judgement;
  };
  readonly dug: {
    readonly at: string | null;
    readonly requiredDepth: number | null;
    /** Depth to dig to so that its reading is in: what is required, and the doubt of reading it. */
    readonly aimDepth: number | null;
    readonly depth: Judgement;
    readonly width: Judgement;
    readonly obstruction: string | null;
    /** Concrete round what the hole holds, at its tightest. */
    readonly room: Judgement;
    /** The hole's own middle; null while it is not measured, or not since the hole was made wider. */
    readonly middle: DugMiddle | null;
    /** What a depth of its own lacks against the rules, in words; null where it lacks nothing. */
    readonly shallower: string | null;
  };
  readonly set: {
    readonly done: boolean;
    readonly at: AssessedPlace | null;
    readonly position: Judgement;
    readonly plumb: Judgement;
    /** The top against the benchmark. */
    readonly level: Judgement;
    /** The top against the other tops. Told beside `level`, and no gate waits for it. */
    readonly tops: Judgement;
    /** How far it is turned about itself; null where the design does not care. No gate waits for it. */
    readonly twist: Judgement | null;
    readonly spacing: readonly (Judgement & { readonly to: string })[];
    /**
     * Worst of position, plumb, level and spacing, and of a twist that was found out; not of `tops`. A spacing that is wrong because the neighbour is not in place counts
     * against the neighbour only.
     */
    readonly verdict: Verdict;
    readonly headline: string;
    readonly nudge: Nudge | null;
    readonly plumbNudge: PlumbNudge | null;
  };
  readonly digGate: Gate;
  readonly pourGate: Gate;
  readonly poured: {
    readonly at: string;
    readonly bags: number;
    /** Whether what its set verdict hangs on was read again since; until then that is how it stood before the pour. */
    readonly readSince: boolean;
  } | null;
}

/** A stake that is believed, or suspected, to have moved without anybody's saying so. */
export interface MovedStake {
  readonly stake: Thing;
  /** The first pull that finds it elsewhere. */
  readonly since: string;
  /** From where it stood to where it stands, metres, site frame, with its 95 % half-width; null where that is not known. */
  readonly shift: { readonly by: Vec; readonly uncertainty: number; readonly words: string } | null;
  /** Where it stood before, site frame. */
  readonly stood: SitePoint | null;
  /** How to drive it back: distance and way, and what level tapes then read. */
  readonly putBack: {
    readonly words: string;
    readonly readings: readonly { readonly from: PullEnd; readonly to: PullEnd; readonly reading: number }[];
  } | null;
}

export interface MovedAssessment {
  /** Likeliest first; more than one where the pulls do not tell which. */
  readonly suspects: readonly MovedStake[];
  /** One misread pull would explain the readings as well. */
  readonly orMisread: boolean;
  /** Pulls that would tell which, or how far: two at most. */
  readonly tells: readonly NextPull[];
  readonly text: string;
}

/** Trouble that no single hole owns: a suspected misreading, a stake that moved, a failed global test. */
export interface Finding {
  readonly code:
    | 'misreading'
    | 'moved-stake'
    | 'baseline'
    | 'global-test'
    | 'undetermined'
    | 'shape'
    | 'heights'
    | 'input'
    | 'decision'
    | 'setback';
  readonly text: string;
  /** Log entries it speaks of. */
  readonly entries: readonly string[];
}

/** How near a post comes to a line on the ground. */
export interface LineGap {
  readonly hole: string;
  /** From its outer face, metres; negative for what lies beyond the line. */
  readonly gap: number;
  /** 95 % half-width, metres; 0 by the plan. */
  readonly doubt: number;
  /** Measured, and guarded by a spare reading; never by the plan alone. */
  readonly checked: boolean;
}

/** What the structure keeps from a line on the ground. */
export interface LineAssessment {
  readonly line: string;
  readonly kind: 'boundary' | 'house' | 'other';
  /** Least distance asked for, metres; null where none is. */
  readonly keep: number | null;
  /** The post that comes nearest by the plan. */
  readonly planned: LineGap | null;
  /** Of the deck's round edge by the plan, metres; null where the plan has none. */
  readonly edge: number | null;
  /** The post that comes nearest, of those that are set and measured. */
  readonly asSet: LineGap | null;
  /** So many posts are set and measured. */
  readonly measured: number;
  /** By the plan, in whole sentences; empty of a line that posts need not mind. */
  readonly text: string;
  /** What is nearer than asked for, or beyond the line, with what to do; empty where nothing is. */
  readonly short: string;
  /** As set; empty until a post is. */
  readonly asSetText: string;
  /** As `short`, of what stands. */
  readonly asSetShort: string;
}

/** The tops among themselves, each against its own target. */
export interface TopsAssessment {
  /** How far the tops that agree stand above their targets, on average, metres; null before two are measured. */
  readonly common: number | null;
  /** Which top governs: it stands furthest above the common level, metres. */
  readonly highest: { readonly hole: string; readonly above: number } | null;
  readonly lowest: { readonly hole: string; readonly above: number } | null;
  /** In one or two sentences. */
  readonly text: string;
}

export interface PullAssessment {
  readonly entry: string;
  readonly predicted: number;
  readonly residual: number;
  readonly redundancy: number;
  readonly standardised: number;
  /** Smallest misreading that would be noticed, metres; null when nothing guards the pull and none would be. */
  readonly smallestCaught: number | null;
  readonly suspect: boolean;
}

/** As of a pull, of one part of what was measured off a string. `predicted` of an offset is positive on the left. */
export interface OffsetAssessment extends PullAssessment {
  readonly part: 'station' | 'offset';
}

export interface NextPull {
  readonly from: PullEnd;
  readonly to: PullEnd;
  readonly expected: number;
  /** What it is expected to settle, in words. */
  readonly text: string;
}

/** A rod reading to be taken next. */
export interface NextHeight {
  readonly on: HeightPoint;
  /** The level's set-up; null while there is none. */
  readonly setup: string | null;
  /** How often, for the sake of a verdict. */
  readonly times: number;
  /** What it is expected to settle, in words. */
  readonly text: string;
}

/** A thing that stays unmeasured, unsure or unchecked whatever is pulled or read. */
export interface BeyondPulls {
  readonly thing: Thing;
  /** Why, and what to do instead, in whole sentences. */
  readonly text: string;
}

/** All that the tool says of a job: what `npm run assess` prints and the screens show. SI units, plain data. */
export interface Assessment {
  readonly format: 'swingtape-assessment';
  readonly version: 1;
  readonly job: string;
  readonly baseline: {
    readonly designed: number | null;
    readonly measured: number | null;
    readonly sigma: number | null;
  };
  readonly holes: readonly HoleAssessment[];
  readonly tops: TopsAssessment;
  /** Lines on the ground that have a place. */
  readonly lines: readonly LineAssessment[];
  readonly pulls: readonly PullAssessment[];
  /** Of each entry its station and its offset, as far as they were read. */
  readonly offsets: readonly OffsetAssessment[];
  readonly globalTest: GlobalTest;
  readonly findings: readonly Finding[];
  /** A stake that moved unnoticed; null when nothing says so. Told among the findings, too. */
  readonly moved: MovedAssessment | null;
  /** What to pull next; the first of `nextPulls`. */
  readonly next: NextPull | null;
  /** What to pull, in order, until nothing is unsure or unchecked, each as if those before it had been read as predicted. */
  readonly nextPulls: readonly NextPull[];
  /** What to read with the rod, in order: tops that are unmeasured, unsure or unguarded, and what they hang on. */
  readonly nextHeights: readonly NextHeight[];
  /** What no pull can fix, guard or settle, and no rod reading. */
  readonly beyondPulls: readonly BeyondPulls[];
}
