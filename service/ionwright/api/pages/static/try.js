"use strict";

// Sends the request in the form and shows the answer: in words first, then as it came.
(() => {
  const part = (id) => document.getElementById(id);
  const form = part("try-form");
  const choice = part("try-choice");
  const body = part("try-body");

  choice.addEventListener("change", () => {
    body.value = part(choice.value).textContent;
  });

  const paragraph = (text) => {
    const element = document.createElement("p");
    element.textContent = text;
    return element;
  };

  const electrode = (name, verdict) => {
    const products = verdict.products.map((product) => product.name).join(", ") || "not decided";
    const equation = verdict.half_equation ? verdict.half_equation.text || verdict.half_equation.ascii : "";
    return paragraph(`At the ${name}: ${products}. ${equation}`);
  };

  const inWords = (answer) => {
    if (answer.cathode && answer.anode) {
      return [electrode("cathode", answer.cathode), electrode("anode", answer.anode)];
    }
    return [paragraph(answer.detail || "")];
  };

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    part("try-status").textContent = "Sending …";
    try {
      const response = await fetch(form.dataset.address, {
        method: "POST",
        headers: { "Content-Type": "application/json" },
        body: body.value,
      });
      const text = await response.text();
      const answer = JSON.parse(text);
      part("try-status").textContent = `Answered with status ${response.status}.`;
      part("try-words").replaceChildren(...inWords(answer));
      part("try-json").textContent = JSON.stringify(answer, null, 2);
      part("try-answer").hidden = false;
    } catch (error) {
      part("try-status").textContent = `The service did not answer: ${error.message}`;
    }
  });
})();
