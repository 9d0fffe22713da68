"""Another program, in another language, with nothing but its standard library and docs/formats.md.

python3 client.py SCENARIO COMMAND... drives the command by JSON-RPC and prints what came of it as JSON.
"""

import json
import subprocess
import sys

PERSON = "R. Example"


class Refused(Exception):
    def __init__(self, error):
        super().__init__(error["message"])
        self.code = error["code"]
        self.data = error.get("data", {})


class Ohmward:
    """One run of the program."""

    def __init__(self, command):
        self.child = subprocess.Popen(
            command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, encoding="utf-8"
        )
        self.sent = 0
        self.state = None

    def call(self, method, **params):
        self.sent += 1
        message = {"jsonrpc": "2.0", "id": f"call {self.sent}", "method": method}
        if params:
            message["params"] = params
        self.child.stdin.write(json.dumps(message) + "\n")
        self.child.stdin.flush()
        answer = json.loads(self.child.stdout.readline())
        assert answer["jsonrpc"] == "2.0", answer
        assert answer["id"] == message["id"], (answer, message)
        if "error" in answer:
            raise Refused(answer["error"])
        self.state = answer["result"].get("state", self.state)
        return answer["result"]

    def refusal(self, method, **params):
        """The code of a call that has to be refused."""
        try:
            self.call(method, **params)
        except Refused as refused:
            return refused.data.get("code", refused.code)
        raise AssertionError(f"{method} was not refused")

    def end(self):
        """Ends the input; nothing may follow but the program's own end."""
        self.child.stdin.close()
        rest = self.child.stdout.read()
        assert rest == "", rest
        return self.child.wait()


def acknowledge(program, cautions, **of):
    for caution in cautions:
        program.call("acknowledge", caution=caution["id"], person=PERSON, **of)


def answer_on_bench(program, step):
    if step["kind"] == "act":
        program.call("done")
    elif step["kind"] == "measure" and step["shows"] is not None:
        try:
            program.call("reading", reading=step["shows"])
        except Refused as refused:
            # A few microvolts the other way round look like leads swapped.
            assert refused.data["code"] == "doubtful-reading", refused
            program.call("reading", reading=step["shows"], sure=True)
    else:
        program.call("take")


def healthy_answer(program, step):
    """At a vehicle that is sound: what lies in the middle of what is good."""
    if step["kind"] == "act":
        program.call("done")
    elif step["kind"] == "measure":
        expected = step["test"]["expected"]
        low, high = expected["low"], expected["high"]
        unit = step["test"]["unit"]
        if high is None:
            program.call("reading", reading="OL" if unit == "ohm" else f"{low} {unit}")
        else:
            middle = ((low or 0) + high) / 2
            program.call("reading", reading=f"{round(middle, 4)} {unit}")
    elif step["kind"] == "look":
        program.call("choose", choose=step["test"]["expected"]["looks"][0])
    else:
        program.call("choose", choose=step["outcomes"][0]["name"])


def test_again(program):
    """Makes every test that must pass after the repair; how many there are."""
    while True:
        lines = program.call("retests")["retests"]
        line = next((one for one in lines if one["after"] is None), None)
        if line is None:
            return len(lines)
        acknowledge(program, line["cautions"], step=line["step"]["id"])
        program.call("retest", step=line["step"]["id"], take=True)


def session(command):
    """From the job sheet to the closed record of a simulated vehicle, and everything on the way."""
    program = Ohmward(command)
    seen = {}
    hello = program.call("hello", protocol=1)
    seen["methods"] = hello["methods"]
    seen["before"] = program.refusal("state")
    name = next(
        one["name"]
        for one in program.call("procedures")["procedures"]
        if one["name"] == "reluctor-no-signal"
    )
    sheet = program.call("sheet", procedure=name)
    fault = next(one["id"] for one in sheet["faults"] if one["id"] == "wire.plus.open")
    terminal = sheet["terminals"][0]["id"]
    job = {
        "complaint": "Cranks but does not start.",
        "codes": ["P0335"],
        "vehicle": {"words": "blue van", "plate": "EX 47 AM"},
        "terminals": {terminal: {"pin": 1, "colour": "RD/BU"}},
    }
    program.call("begin", procedure=name, job=job, bench={"fault": fault})
    program.call("note", text="A program drives this.")
    program.call("instruments", instruments=["meter", "test-light", "scope", "helper"])
    seen["early"] = program.refusal("accept")
    taken_back = False
    while program.state["step"]["kind"] != "conclude":
        step = program.state["step"]
        if program.state["cautions"]:
            seen["caution"] = program.refusal("done")
        acknowledge(program, program.state["cautions"])
        answer_on_bench(program, step)
        if step["kind"] == "measure" and not taken_back:
            taken_back = True
            program.call("back")
            assert program.state["step"]["id"] == step["id"]
            acknowledge(program, program.state["cautions"])
            answer_on_bench(program, step)
    proposals = program.call("next")["proposals"]
    for proposal in proposals[:1]:
        prepared = program.call("prepare", test=proposal["test"])
        acknowledge(program, prepared["cautions"], test=proposal["test"])
        program.call("test", test=proposal["test"], take=True)
    scope = {"capture": "sensor.plus sensor.minus", "state": "cranking"}
    acknowledge(program, program.call("prepare", test=scope)["cautions"], test=scope)
    measured = program.call("capture", test=scope)
    seen["captured"] = measured["capture"]["from"]
    assert "events" not in measured
    program.call("capture", test=scope, record=True)
    seen["suspect"] = program.call("suspects")["suspects"][0]["repair"]
    seen["missing"] = program.call("weigh")["missing"]
    program.call("accept", sure=True)
    seen["concluded"] = program.state["concluded"]
    test_again(program)
    seen["verdict"] = program.call("retests")["verdict"]
    program.call("close")
    return {**seen, "state": program.state, "exit": program.end()}


def real(command):
    """At a real vehicle: caution by caution, some way, and the input ends."""
    program = Ohmward(command)
    program.call("begin", job={"complaint": "stalls when warm"})
    cautions = program.state["cautions"]
    seen = {
        "bulk": program.refusal(
            "acknowledge", caution=[one["id"] for one in cautions], person=PERSON
        ),
        "nobody": program.refusal("acknowledge", caution=cautions[0]["id"], person=" "),
        "silent": None,
    }
    for _ in range(2):
        acknowledge(program, program.state["cautions"])
        seen["silent"] = program.refusal("take")
        healthy_answer(program, program.state["step"])
    return {**seen, "state": program.state, "exit": program.end()}


def resumed(command):
    """Goes on where it stopped, and concludes in its own words."""
    program = Ohmward(command)
    program.call("state")
    step = program.state["step"]["id"]
    acknowledge(program, program.state["cautions"])
    healthy_answer(program, program.state["step"])
    program.call("conclude", words="A connector was not seated.")
    return {"step": step, "state": program.state, "exit": program.end()}


def retest(command):
    """After the repair."""
    program = Ohmward(command)
    lines = test_again(program)
    program.call("close")
    return {"lines": lines, "state": program.state, "exit": program.end()}


def drill(command):
    """A hidden fault: the tests that tell most, until one repair is nearly sure."""
    program = Ohmward(command)
    program.call("hello")
    program.call("begin", procedure="reluctor-no-signal", level="named", seed=4, student="Ada Example")
    seen = {"typed": program.refusal("reading", reading="5 V"), "early": program.refusal("debrief")}
    readings = 0
    while program.state["diagnosis"]["leading"][0]["chance"] < 0.95:
        proposals = program.call("next")["proposals"]
        if not proposals:
            break
        test = proposals[0]["test"]
        acknowledge(program, program.call("prepare", test=test)["cautions"], test=test)
        program.call("measure", test=test)
        readings += 1
    repairs = [one["repair"] for one in program.call("repairs")["repairs"]]
    named = program.state["diagnosis"]["leading"][0]["repair"]
    assert named in repairs, (named, repairs)
    program.call("diagnose", repairs=[named])
    debrief = program.call("debrief")
    return {
        **seen,
        "readings": readings,
        "named": named,
        "debrief": debrief,
        "state": program.state,
        "exit": program.end(),
    }


SCENARIOS = {one.__name__: one for one in (session, real, resumed, retest, drill)}

if __name__ == "__main__":
    print(json.dumps(SCENARIOS[sys.argv[1]](sys.argv[2:])))
