export * from './units/format';
export * from './units/parse';
export {
  fromOwnUnit,
  ownUnit,
  type Quantity,
  toOwnUnit,
  type Unit,
  type UnitSystem,
} from './units/table';
