import { invitePerson } from "@/lib/service";
import { keep } from "@/app/_server/kept";
import { see } from "@/app/_server/form";
import { post } from "@/app/_server/post";

export async function POST(request: Request): Promise<Response> {
  return post(request, "desk", async ({ house, actor, values }) => {
    if (actor.kind !== "desk") return see("/desk/open");
    const done = await invitePerson(house, actor, { values });
    if (done.ok) return see("/desk/people?done=invited");
    if (done.error.code !== "invalid") return see("/desk");
    return see(`/desk/people?kept=${keep({ form: "people", owner: actor.person, values, errors: done.error.errors })}`);
  });
}
