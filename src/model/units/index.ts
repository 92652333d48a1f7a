export * from './format';
export * from './parse';
export {
  fromOwnUnit,
  ownUnit,
  type Quantity,
  toOwnUnit,
  type Unit,
  type UnitSystem,
  unitNamed,
  unitsOf,
} from './table';
