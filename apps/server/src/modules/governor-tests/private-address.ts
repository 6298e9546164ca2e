import { BlockList, isIP } from 'node:net';

/** RFC 1918 and RFC 4193 private ranges and loopback (RFC 1122 §3.2.1.3, RFC 4291 §2.5.3). Link-local addresses are left out. */
const inside = new BlockList();
for (const [net, prefix] of [
  ['127.0.0.0', 8],
  ['10.0.0.0', 8],
  ['172.16.0.0', 12],
  ['192.168.0.0', 16],
] as const)
  inside.addSubnet(net, prefix, 'ipv4');
inside.addAddress('::1', 'ipv6');
inside.addSubnet('fc00::', 7, 'ipv6');

/** Whether the server may connect there for readings: an address in numbers inside the shop. Names are no addresses, since they can change. */
export function isInsideShop(host: string, port: number): boolean {
  const family = isIP(host);
  if (family === 0 || !Number.isInteger(port) || port < 1024 || port > 65_535) return false;
  return inside.check(host, family === 4 ? 'ipv4' : 'ipv6');
}
