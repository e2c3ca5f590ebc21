/**
 * The check code of a design made with a catalog: the same on every machine and in every browser.
 *
 * SHA-256 (FIPS 180-4) of the RFC 8785 canonical JSON. `name` and `job` are left out, and a catalog's `shop`: they change nothing about the dock.
 */
import { sha256 } from '@noble/hashes/sha2.js'
import { bytesToHex, utf8ToBytes } from '@noble/hashes/utils.js'
import canonicalize from 'canonicalize'
import type { Catalog } from './catalog/index.ts'
import { type Shop, shopOf } from './catalog-index.ts'
import type { Design } from './design/index.ts'
import type { Fingerprint } from './dock.ts'
import { ENGINE_VERSION } from './version.ts'

/** Of any plain data: hex digits. */
export const digestOf = (data: unknown): string => bytesToHex(sha256(utf8ToBytes(canonicalize(data) ?? '')))

/** A catalog is long: each is hashed once. How the shop's papers speak of it (`shop`) changes nothing about a dock or its price. */
const catalogDigest = ({ catalog: { shop: _, ...rest } }: Shop): string => digestOf(rest)

/** The check codes of a design with a catalog: SHA-256 of both as RFC 8785 JSON, and the engine's version. */
export const fingerprintOf = (design: Design, catalog: Catalog): Fingerprint =>
  fingerprintIn(design, shopOf(catalog))

export function fingerprintIn(design: Design, shop: Shop): Fingerprint {
  const { name: _name, job: _job, ...rest } = design
  const parts = {
    design: digestOf(rest),
    catalog: shop.once(catalogDigest),
    engine: ENGINE_VERSION,
  }
  return { all: digestOf(parts), ...parts }
}
