/** The kinds of quantity that a guide can state. */
export type Dimension =
  | 'length'
  | 'mass'
  | 'volume'
  | 'time'
  | 'torque'
  | 'force'
  | 'pressure'
  | 'angle'
  | 'temperature'
  | 'area'
  | 'current'
  | 'charge'
  | 'voltage'
  | 'power'
  | 'resistance'
  | 'percentage';

declare const dimension: unique symbol;

/**
 * A number in the base unit of its dimension, branded so that a torque cannot be used as a length:
 * length mm · mass kg · volume l · time min · torque N·m · force N · pressure kPa · angle degrees ·
 * temperature °C · area mm² · current A · charge A·h · voltage V · power W ·
 * resistance Ω · percentage %.
 */
export type Base<D extends Dimension> = number & { readonly [dimension]: D };

export type Millimetres = Base<'length'>;
export type Minutes = Base<'time'>;
export type NewtonMetres = Base<'torque'>;
export type Degrees = Base<'angle'>;

/** A quantity as the author wrote it: its value in the base unit, and the unit and digits to show first. */
export interface Quantity<D extends Dimension = Dimension> {
  readonly dimension: D;
  readonly base: Base<D>;
  /** The unit as Baybook prints it, for example `N·m`, `lbf·ft`, `mm`, `in`. */
  readonly unit: string;
  /** The number as the author wrote it, for example `25`, `12.50`, `1/2`. */
  readonly written: string;
}

/** A range as the author wrote it, least first. */
export interface QuantityRange<D extends Dimension = Dimension> {
  readonly least: Quantity<D>;
  readonly most: Quantity<D>;
}

/** Brands a number that is known to be in the base unit of a dimension. */
export function base<D extends Dimension>(value: number): Base<D> {
  return value as Base<D>;
}
