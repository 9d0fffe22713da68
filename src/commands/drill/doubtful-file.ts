/** A file of a class that does not count as it stands. */
export interface DoubtfulFile {
  readonly file: string;
  readonly kind:
    | 'repeated'
    | 'copied'
    | 'altered'
    | 'cut-off'
    | 'no-drill'
    | 'second-try'
    | 'other-circuit'
    | 'other-procedure'
    | 'other-cautions'
    | 'other-drill'
    | 'other-rules';
  readonly words: string;
}
