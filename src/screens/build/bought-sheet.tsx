import type { JobView } from '../../judge/view.ts';
import { LengthField, Sheet } from '../../ui/index.ts';
import type { BuyFieldsProps } from './buy-fields.tsx';

interface BoughtSheetProps extends BuyFieldsProps {
  readonly view: JobView;
  readonly onClose: () => void;
}

/** Posts that were bought in other lengths than the rest. */
export function BoughtSheet({ view, plan, change, onClose }: BoughtSheetProps) {
  const own = plan.supplies?.boughtFor ?? {};
  return (
    <Sheet title="Bought, post by post" onClose={onClose}>
      {view.holes
        .filter(({ section }) => section.kind === 'post')
        .map(({ label }) => (
          <LengthField
            key={label}
            label={`Post ${label}`}
            value={(Object.hasOwn(own, label) ? own[label] : plan.supplies?.bought) ?? null}
            units={plan.units}
            onChange={(length) =>
              change((before) => ({
                ...before,
                supplies: {
                  ...before.supplies,
                  boughtFor: { ...before.supplies?.boughtFor, [label]: length },
                },
              }))
            }
          />
        ))}
    </Sheet>
  );
}
