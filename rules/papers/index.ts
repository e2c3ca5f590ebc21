export {
  type DifferenceRow,
  difference,
  type Have,
  type PackingList,
  packingList,
  rowsOfList,
} from './packing-list.ts'
