import { isClash } from "../store";

/** What two may begin at the same moment: who meets the other's row does it again, from what stands now. */
export async function againOnClash<T>(work: () => Promise<T>, tries = 3): Promise<T> {
  try {
    return await work();
  } catch (error) {
    if (tries <= 1 || !isClash(error)) throw error;
    return againOnClash(work, tries - 1);
  }
}
