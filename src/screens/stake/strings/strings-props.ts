/** What is open of the strings and the ways back. */
export type OpenStrings =
  | { readonly at: 'list' }
  | { readonly at: 'string'; readonly label: string }
  | { readonly at: 'ties'; readonly hole: string }
  | { readonly at: 'back'; readonly hole: string | null };

export interface StringsProps {
  /** The hole at hand. */
  readonly hole: string | null;
}

export interface OpenSheetProps extends StringsProps {
  readonly open: OpenStrings;
  readonly onOpen: (open: OpenStrings | null) => void;
}
