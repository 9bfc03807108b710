/**
 * Another tool posts a recipe when it is saved; the verdict goes back in short.
 *
 *     npm run example examples/12-answer-a-webhook.ts
 *
 * The handler is in webhook.ts. Here three posts are handed to it: a good one, one with a slip in it, one by a stranger.
 *
 * prints
 *
 *     200 {
 *       "verdict": "may craze",
 *       "inTwenty": {
 *         "crazesOnCooling": 1,
 *         "crazesLater": 3,
 *         "sound": 15,
 *         "shivers": 1
 *       },
 *       "chances": "in 20: 4 craze, 15 hold, 1 shiver",
 *       "stress": "−40 MPa (−101 to +25)",
 *       "headline": "This glaze may craze on this red stoneware: about 4 in 20.",
 *       "mind": [
 *         "Fine silica dust scars the lungs. Weigh in a P3 or P100 mask, clean wet and never sweep dry.",
 *         "A crazed glaze on a food surface holds dirt and weakens the ware. Keep crazed pieces for flowers, and ask your local code what it allows for food.",
 *         "This is a calculation from compositions. It never certifies that ware is safe for food; a leach test by a licensed laboratory does."
 *       ]
 *     }
 *     422 {
 *       "type": "about:blank",
 *       "status": 422,
 *       "detail": "One thing needs mending: “whitting” is not a material known here. Did you mean whiting?",
 *       "issues": [
 *         {
 *           "pointer": "/glaze/recipe/2/material",
 *           "message": "“whitting” is not a material known here. Did you mean whiting?",
 *           "suggestion": "whiting"
 *         }
 *       ]
 *     }
 *     401 {
 *       "type": "about:blank",
 *       "status": 401,
 *       "detail": "Send the shared secret in the header x-studio-secret."
 *     }
 */
import { connect } from "./connect.ts";
import { redStoneware } from "./larch-lane.ts";
import { answerWebhook, SECRET_HEADER } from "./webhook.ts";

// In earnest the secret comes from the environment and from nowhere else.
const secret = "larch-lane-after-rain";
const handle = answerWebhook(await connect(), secret);

async function post(material: string, known: string): Promise<void> {
  const recipe = [
    { material: "potash-feldspar", parts: 30 },
    { material: "silica", parts: 34 },
    { material, parts: 16 },
    { material: "kaolin", parts: 20 },
  ];
  const answer = await handle(
    new Request("https://larch-lane.example/fit", {
      method: "POST",
      headers: { [SECRET_HEADER]: known },
      body: JSON.stringify({ glaze: { recipe, thicknessMm: 0.3 }, body: redStoneware }),
    }),
  );
  console.log(answer.status, JSON.stringify(await answer.json(), null, 2));
}

await post("whiting", secret);
await post("whitting", secret);
await post("whiting", "guessed");
