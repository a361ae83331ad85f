import { revokePerson } from "@/lib/service";
import { see, textOf } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const done = await revokePerson(house, actor, { email: textOf(values, "email") });
    return see(done.ok ? "/desk/people?done=gone" : "/desk/people");
  });
}
