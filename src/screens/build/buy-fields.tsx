import { BAG_SIZES } from '../../build/index.ts';
import { readStock } from '../../build/read-stock.ts';
import { stockName, usualSpare, usualStock } from '../../build/stock.ts';
import type { Length } from '../../job/length.ts';
import type { Plan, Supplies } from '../../job/plan-schema.ts';
import { USUAL_WASTE } from '../../judge/supplies.ts';
import { FIELDS } from '../../plan/index.ts';
import { ChoiceField, LengthField, NumberField } from '../../ui/index.ts';
import { TextInput } from '../../ui/text-input.tsx';
import { useDraft } from '../../ui/use-draft.ts';
import { isMetric } from '../../units/index.ts';
import { ANY_HEIGHT, FROM_ZERO } from '../plan/limits.ts';
import type { ChangePlan } from '../plan/use-plan-edits.ts';
import { yieldLitres, yieldShown, yieldUnit } from './volume-words.ts';

export interface BuyFieldsProps {
  readonly plan: Plan;
  readonly change: ChangePlan;
}

const withSupplies = (plan: Plan, part: Supplies): Plan => ({
  ...plan,
  supplies: { ...plan.supplies, ...part },
});

/** What posts are sold in, what was bought, and where the ground is taken to be. */
export function PostFields({ plan, change }: BuyFieldsProps) {
  const { supplies, units } = plan;
  const say = (part: Supplies) => change((before) => withSupplies(before, part));
  return (
    <>
      <StockField plan={plan} onChange={(stock) => say({ stock })} />
      <LengthField
        label={FIELDS.spare}
        value={supplies?.spare ?? usualSpare(units)}
        units={units}
        bounds={FROM_ZERO}
        {...(supplies?.spare ? {} : { from: 'our choice' })}
        onChange={(spare) => say({ spare })}
      />
      <LengthField
        label={FIELDS.bought}
        hint="Of every post. Leave it empty until you have them; a single post’s own length is typed below the list."
        value={supplies?.bought ?? null}
        units={units}
        onChange={(bought) => say({ bought })}
      />
      <LengthField
        label={FIELDS.levelGround}
        hint="Taken as level. Below the benchmark with a minus."
        value={supplies?.ground ?? null}
        units={units}
        bounds={ANY_HEIGHT}
        onChange={(ground) => say({ ground })}
      />
    </>
  );
}

function StockField({
  plan,
  onChange,
}: {
  readonly plan: Plan;
  readonly onChange: (stock: Length[]) => void;
}) {
  const { units, supplies } = plan;
  const label = FIELDS.stock;
  const shown = (supplies?.stock ?? usualStock(units)).map((length) => stockName(length, units)).join('; ');
  const draft = useDraft(shown, (text) => readStock(text, units, label), onChange);
  return (
    <TextInput
      label={label}
      hint={isMetric(units) ? 'In metres, with ; between them.' : 'In feet, with ; between them.'}
      {...(supplies?.stock ? {} : { from: 'common practice; ask your yard' })}
      draft={draft}
    />
  );
}

/** Nobody spills more than half. */
const MOST_WASTE_PERCENT = 50;
const PER_CENT = 100;

/** What a bag makes, and what else stands in the hole. */
export function ConcreteFields({ plan, change }: BuyFieldsProps) {
  const { supplies, units } = plan;
  const say = (part: Supplies) => change((before) => withSupplies(before, part));
  const sizes = BAG_SIZES[isMetric(units) ? 'kilograms' : 'pounds'];
  const chosen = sizes.find(({ litres }) => sameYield(litres, supplies?.bagYield));
  const bell = supplies?.bell;
  return (
    <>
      <ChoiceField
        label="Bags"
        value={chosen?.name ?? null}
        hint="The usual yield of 0.15 ft³ for 20 lb, as sellers print it; in kilograms by the same ratio."
        choices={sizes.map(({ name, litres }) => ({
          value: name,
          label: name,
          hint: `${yieldShown(litres, units)} ${yieldUnit(units)}`,
        }))}
        onChange={(name) => say({ bagYield: sizes.find((size) => size.name === name)!.litres })}
      />
      <NumberField
        label="One bag makes, as printed on it"
        value={supplies?.bagYield === undefined ? null : yieldShown(supplies.bagYield, units)}
        min={isMetric(units) ? 1 : 0.05}
        max={isMetric(units) ? 1000 : 35}
        suffix={yieldUnit(units)}
        onChange={(shown) => say({ bagYield: yieldLitres(shown, units) })}
      />
      <NumberField
        label="Added for waste"
        value={Math.round((supplies?.waste ?? USUAL_WASTE) * PER_CENT)}
        min={0}
        max={MOST_WASTE_PERCENT}
        suffix="%"
        {...(supplies?.waste === undefined ? { from: 'our choice' } : {})}
        onChange={(percent) => say({ waste: percent / PER_CENT })}
      />
      <LengthField
        label={FIELDS.tube}
        hint="Only where the concrete stands in a tube; else leave it empty, or 0."
        value={supplies?.tube ?? null}
        units={units}
        bounds={FROM_ZERO}
        onChange={(tube) => say({ tube })}
      />
      <LengthField
        label={FIELDS.bell}
        hint="Only where the hole widens at its foot; else leave it empty, or 0."
        value={bell?.diameter ?? null}
        units={units}
        bounds={FROM_ZERO}
        onChange={(diameter) => say({ bell: { diameter, height: bell?.height ?? diameter } })}
      />
      {bell && bell.diameter.m > 0 && (
        <LengthField
          label={FIELDS.bellHeight}
          value={bell.height}
          units={units}
          bounds={FROM_ZERO}
          onChange={(height) => say({ bell: { ...bell, height } })}
        />
      )}
    </>
  );
}

/** Yields that show alike are one. */
const sameYield = (one: number, other: number | undefined): boolean =>
  other !== undefined && Math.abs(one - other) < 1e-6 * one;
