import { networkInterfaces } from "node:os";

/** Networks of machines inside machines: reached by no phone. */
const VIRTUAL = /^(?:docker|br-|veth|virbr|vmnet|vbox|tun|tap|utun|tailscale|zt|wg|vEthernet)/i;

/** Addresses of this machine that only a local network reaches (RFC 1918 and RFC 3927), the likeliest first. */
export function localAddresses(): readonly string[] {
  const found: { readonly address: string; readonly isVirtual: boolean }[] = [];
  for (const [name, addresses] of Object.entries(networkInterfaces())) {
    for (const { address, family, internal } of addresses ?? []) {
      if (family === "IPv4" && !internal && isPrivate(address)) found.push({ address, isVirtual: VIRTUAL.test(name) });
    }
  }
  return found.sort((a, b) => Number(a.isVirtual) - Number(b.isVirtual)).map(({ address }) => address);
}

export function isPrivate(address: string): boolean {
  const parts = address.split(".").map(Number);
  const [a = -1, b = -1] = parts;
  if (parts.length !== 4 || parts.some((part) => !Number.isInteger(part) || part < 0 || part > 255)) return false;
  return (
    a === 10 || a === 127 || (a === 172 && b >= 16 && b <= 31) || (a === 192 && b === 168) || (a === 169 && b === 254)
  );
}
