"""Small circuits by ngspice (Debian), netlists written by hand. Prints JSON; run: python3 circuits.py > circuits.json

Each entry: netlist, and what is asked. 'op' asks for steady voltages and currents, 'tran' for values at moments or
over a time. ngspice counts the current of a voltage source from plus to minus inside; here it is turned round, so
that a source that delivers counts positive, as in the project.
"""
import json
import os
import re
import subprocess
import sys
import tempfile

DIODE = ".model DS D(IS=1e-12 N=1 RS=0 GMIN=1e-12)\n"
BRIDGE = ".model DB D(IS=1e-9 N=1.3 RS=0.01)\n"
LED = ".model DL D(IS=1e-18 N=2 RS=2)\n"
IR = ".model DI D(IS=1e-15 N=1.6 RS=1)\n"

OP = {
    # name: (netlist, {key: expression})
    "divider": ("V1 in 0 24\nR1 in mid 4.7k\nR2 mid 0 1k\nRL mid 0 10k\n", {"mid": "v(mid)", "source": "-i(V1)"}),
    "unbalanced bridge of resistors": (
        "V1 in 0 10\nRs in top 12\nR1 top l 100\nR2 l 0 220\nR3 top r 150\nR4 r 0 180\nR5 l r 47\n",
        {"l": "v(l)", "r": "v(r)", "source": "-i(V1)"},
    ),
    "opto input with series resistor": (
        "V1 in 0 24\nR1 in a 2.2k\nD1 a c DI\nQ1 c b 0 QN\nVb drv 0 5\nRb drv b 10k\n" + IR
        + ".model QN NPN(IS=1e-14 BF=200 BR=2)\n",
        {"led": "v(a)-v(c)", "left": "v(c)", "source": "-i(V1)"},
    ),
    "open collector with pull-up, on": (
        "V1 vcc 0 5\nRp vcc out 1k\nQ1 out b 0 QN\nVb drv 0 5\nRb drv b 4.7k\nRin out 0 20k\n"
        ".model QN NPN(IS=1e-14 BF=150 BR=3)\n",
        {"out": "v(out)", "source": "-i(V1)"},
    ),
    "open collector with pull-up, off": (
        "V1 vcc 0 5\nRp vcc out 1k\nQ1 out b 0 QN\nVb drv 0 0\nRb drv b 4.7k\nRin out 0 20k\n"
        ".model QN NPN(IS=1e-14 BF=150 BR=3)\n",
        {"out": "v(out)"},
    ),
    "encoder supply at the far end of its cable": (
        "V1 s 0 5\nRsrc s a 0.05\nRgo a b 1.2315\nRback c 0 1.2315\nIenc b c 0.15\nRterm b c 330\n",
        {"at encoder": "v(b)-v(c)", "0 V lifted": "v(c)"},
    ),
    "indicator lamp (LED) on 24 V": ("V1 in 0 24\nR1 in a 2.7k\nD1 a 0 DL\n" + LED, {"led": "v(a)", "amps": "-i(V1)"}),
    "PNP sensor into an opto input": (
        "V1 p 0 24\nQ1 out b p QP\nRb b 0 22k\nRleak out 0 47k\nRin out a 3.3k\nD1 a 0 DI\n" + IR
        + ".model QP PNP(IS=2e-14 BF=120 BR=2)\n",
        {"out": "v(out)", "led": "v(a)", "source": "-i(V1)"},
    ),
    "PNP output working against an NPN output": (
        "V1 p 0 24\nQ1 out b1 p QP\nR1 b1 0 22k\nRs out x 100\nQ2 x b2 0 QN\nR2 p b2 47k\n"
        ".model QP PNP(IS=2e-14 BF=120 BR=2)\n.model QN NPN(IS=1e-14 BF=200 BR=2)\n",
        {"out": "v(out)", "x": "v(x)", "source": "-i(V1)"},
    ),
    "two supplies joined through diodes": (
        "V1 a 0 24.5\nR1 a a1 0.1\nD1 a1 bus DB\nV2 b 0 24.2\nR2 b b1 0.15\nD2 b1 bus DB\nRL bus 0 6\n" + BRIDGE,
        {"bus": "v(bus)", "first": "-i(V1)", "second": "-i(V2)"},
    ),
    "analogue command of 10 V through a long cable": (
        "V1 s 0 10\nRo s a 47\nRgo a b 2.05\nRin b c 20k\nRback c 0 2.05\nRcm c 0 100k\nVn e 0 0.8\nRn e c 22k\n",
        {"at input": "v(b)-v(c)", "source": "-i(V1)"},
    ),
    "dump resistor and divider that watches the bus": (
        "V1 s 0 82\nRs s bus 0.25\nRdump bus 0 12\nR1 bus sense 100k\nR2 sense 0 3.9k\nD1 sense 0 DS\n" + DIODE,
        {"bus": "v(bus)", "sense": "v(sense)", "source": "-i(V1)"},
    ),
    "Zener diode holding 5 V": (
        "V1 in 0 12\nR1 in z 330\nD1 0 z DZ\nRL z 0 1k\n.model DZ D(IS=1e-14 N=1 BV=5.1 IBV=1e-14)\n",
        {"z": "v(z)", "source": "-i(V1)"},
    ),
}

TRAN = {
    # name: (netlist, tran, {key: measure})
    "relay coil switched on": (
        "V1 in 0 24\nL1 in x 1.2\nR1 x 0 480\n",
        "1u 20m 0 5u uic",
        {"current at 2.5 ms": "find i(L1) at=2.5m", "current at 10 ms": "find i(L1) at=10m"},
    ),
    "relay coil switched off, with diode": (
        "L1 a x 1.2 ic=0.05\nR1 x 0 480\nD1 0 a DS\nRo a 0 1e9\n" + DIODE,
        "1u 8m 0 2u uic",
        {"current at 1 ms": "find i(L1) at=1m", "current at 4 ms": "find i(L1) at=4m",
         "time to 15 %": "when i(L1)=0.0075 fall=1"},
    ),
    "relay coil switched off, with a resistor across it only": (
        "L1 a x 1.2 ic=0.05\nR1 x 0 480\nRp a 0 4.7k\n",
        "0.2u 2m 0 0.5u uic",
        {"current at 0.1 ms": "find i(L1) at=0.1m", "volts at 0.1 ms": "find v(a) at=0.1m"},
    ),
    "bus capacitor through its bleeder": (
        "C1 bus 0 22m ic=81.048651\nR1 bus 0 220\n",
        "1m 6 0 2m uic",
        {"volts at 1 s": "find v(bus) at=1", "time to 60 V": "when v(bus)=60 fall=1"},
    ),
    "half-wave rectifier with capacitor": (
        "V1 in 0 SIN(0 33.94 50)\nRs in a 0.5\nD1 a out DB\nC1 out 0 4.7m\nRL out 0 40\n" + BRIDGE,
        "10u 200m 0 10u uic",
        {"mean": "avg v(out) from=160m to=200m", "highest": "max v(out) from=160m to=200m",
         "lowest": "min v(out) from=160m to=200m", "first peak of current": "max i(Vs) from=0 to=10m"},
    ),
    "bridge rectifier with capacitor": (
        "V1 p n SIN(0 70.7107 50)\nRs p p1 0.25\nD1 p1 bus DB\nD2 n bus DB\nD3 0 p1 DB\nD4 0 n DB\n"
        "C1 bus 0 22m\nRL bus 0 7.4\nRn n 0 1e5\n" + BRIDGE,
        "10u 300m 0 10u uic",
        {"mean": "avg v(bus) from=260m to=300m", "highest": "max v(bus) from=260m to=300m",
         "lowest": "min v(bus) from=260m to=300m", "secondary r.m.s.": "rms i(Vs) from=260m to=300m"},
    ),
    "input filter behind a contact": (
        "V1 in 0 PULSE(0 24 1m 1n 1n 10 20)\nR1 in a 3.3k\nC1 a 0 100n\nR2 a 0 10k\n",
        "1u 5m 0 1u",
        {"volts at 1.2 ms": "find v(a) at=1.2m", "volts at 2 ms": "find v(a) at=2m"},
    ),
    "coil, capacitor and resistor ringing": (
        "V1 in 0 10\nR1 in a 8\nL1 a b 10m\nC1 b 0 10u\n",
        "1u 6m 0 1u uic",
        {"volts at 1 ms": "find v(b) at=1m", "highest": "max v(b)", "volts at 5 ms": "find v(b) at=5m"},
    ),
}


def spice(deck):
    with tempfile.NamedTemporaryFile("w", suffix=".cir", delete=False) as file:
        file.write(deck)
    try:
        done = subprocess.run(["ngspice", "-b", file.name], capture_output=True, text=True, timeout=120)
    finally:
        os.unlink(file.name)
    return done.stdout + done.stderr


def numbers(text, keys):
    found = {}
    for n, key in enumerate(keys):
        hit = re.search(rf"^q{n}\s*=\s*([-+0-9.eE]+)", text, re.M)
        if not hit:
            raise SystemExit(f"ngspice gave no number for {key}:\n{text}")
        found[key] = float(hit.group(1))
    return found


STEADY = ".options reltol=1e-8 abstol=1e-13 vntol=1e-9 gmin=1e-12\n"
MOVING = ".options reltol=1e-5 abstol=1e-9 vntol=1e-7 gmin=1e-12 method=gear maxord=2\n"

result = {"op": {}, "tran": {}}
for name, (net, asks) in OP.items():
    control = "".join(f"let q{n} = {expression}\nprint q{n}\n" for n, expression in enumerate(asks.values()))
    result["op"][name] = numbers(
        spice(f"* {name}\n{net}{STEADY}.control\nset numdgt=12\nop\n{control}.endc\n.end\n"), asks)
for name, (net, tran, asks) in TRAN.items():
    # A source of no volts in the place of the series resistor's lead shows the secondary's current.
    net = net.replace("Rs in a", "Vs in in2 0\nRs in2 a").replace("Rs p p1", "Vs p p2 0\nRs p2 p1")
    control = "".join(f"meas tran q{n} {measure}\n" for n, measure in enumerate(asks.values()))
    result["tran"][name] = numbers(
        spice(f"* {name}\n{net}{MOVING}.control\nset numdgt=12\ntran {tran}\n{control}.endc\n.end\n"), asks)
json.dump(result, sys.stdout, indent=1)
print()
