import { unbroken } from './unbroken.ts';

/** One sentence about bad input. It is read out at once. */
export function Problem({ text, id }: { readonly text: string; readonly id?: string }) {
  return (
    <p class="problem" role="alert" id={id}>
      {unbroken(text)}
    </p>
  );
}
