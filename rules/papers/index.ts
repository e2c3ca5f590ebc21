export {
  difference,
  type DifferenceRow,
  type Have,
  type PackingList,
  packingList,
  rowsOfList,
} from './packing-list.ts'
