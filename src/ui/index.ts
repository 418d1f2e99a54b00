/** The parts that screens share. The look is in `ui.css`. */
export {
  Button,
  type ButtonKind,
  ButtonLink,
  type ButtonLinkProps,
  type ButtonProps,
  ButtonRow,
} from './button.tsx';
export { Caution, type CautionProps } from './caution.tsx';
export { CheckField, type CheckFieldProps } from './check-field.tsx';
export { type Choice, ChoiceField, type ChoiceFieldProps } from './choice-field.tsx';
export type { Drawn, DrawnHole, DrawnPull } from './drawing/drawn.ts';
export { PlanDrawing, type PlanDrawingProps } from './drawing/plan-drawing.tsx';
export { Figure, type FigureProps } from './figure.tsx';
export { Frame, type FrameProps, type FrameTab, type SaveMark } from './frame.tsx';
export { GateList, type GateListProps } from './gate-list.tsx';
export { HoleStrip, type HoleStripProps, type StripHole } from './hole-strip.tsx';
export { type JudgementRow, JudgementTable, type JudgementTableProps } from './judgement-table.tsx';
export { Keypad, type KeypadProps } from './keypad.tsx';
export { LengthField, type LengthFieldProps } from './length-field.tsx';
export { differenceInWords, lengthInWords } from './length-words.ts';
export { type HoleLook, type HoleState, holeWords, verdictWord } from './mark-shapes.tsx';
export { NumberField, type NumberFieldProps } from './number-field.tsx';
export { Problem } from './problem.tsx';
export { PullRow, type PullRowProps } from './pull-row.tsx';
export { Sheet, type SheetProps } from './sheet.tsx';
export { StrikeForm, type StrikeFormProps } from './strike-form.tsx';
export { TextField, type TextFieldProps } from './text-field.tsx';
export type { ToastNote } from './toast.tsx';
export { VerdictMark, type VerdictMarkProps } from './verdict-mark.tsx';
