import { listVenues, type Actor, type House } from "@/lib/service";
import type { Speech } from "@/components/ui/say";

/** Language, zone and money of the desk's own venue: the first that it holds. */
export async function hallSpeech(house: House, actor: Actor): Promise<Speech> {
  const seen = await listVenues(house, actor, {});
  const first = seen.ok ? seen.value[0]?.venue : undefined;
  return first ?? { locale: "en-GB", timeZone: "UTC", currency: "GBP" };
}
