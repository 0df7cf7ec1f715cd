/** The directives that exist, by the form they are written in, as `directives/` knows them. */
export interface DirectiveNames {
  readonly leaf: ReadonlySet<string>;
  readonly container: ReadonlySet<string>;
  readonly text: ReadonlySet<string>;
  /** Attributes that may stand without a value, on any directive. */
  readonly flags: ReadonlySet<string>;
}
