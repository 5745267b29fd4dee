// One look for all pages: dark ink on white, nothing told by colour alone, a phone's width first.
#include "sheets/style.hpp"

#include <fmt/format.h>

namespace slabwright::sheets {
namespace {

constexpr const char* look = R"(
*{box-sizing:border-box}
html{-webkit-text-size-adjust:100%}
body{margin:0 auto;padding:1rem;max-width:60rem;color:#111;background:#fff;
font:1rem/1.45 sans-serif;overflow-wrap:break-word}
header{border-bottom:2px solid #111;margin-bottom:1rem}
header p{margin:.2rem 0}
.shop{font-weight:bold;text-transform:uppercase;letter-spacing:.04em}
h1{font-size:1.6rem;line-height:1.2;margin:.2rem 0 .4rem}
h2{font-size:1.15rem;margin:1.4rem 0 .5rem;border-bottom:1px solid #767676;padding-bottom:.15rem}
h3{font-size:1rem;margin:1rem 0 .3rem}
p{margin:.5rem 0}
a{color:#0b4a8f}
ul,ol{padding-left:1.4rem;margin:.4rem 0}
li{margin:.25rem 0}
dl{margin:.5rem 0}
dl>div{display:flex;flex-wrap:wrap;gap:0 1rem;border-bottom:1px solid #d0d0d0;padding:.3rem 0}
dt{flex:0 0 13rem;color:#444}
dd{flex:1 1 14rem;margin:0;font-weight:600}
.wide,figure{overflow-x:auto}
table{border-collapse:collapse;width:100%;margin:.5rem 0;font-variant-numeric:tabular-nums}
th,td{text-align:left;vertical-align:top;padding:.3rem .5rem;border-bottom:1px solid #c4c4c4}
th{border-bottom:2px solid #111;font-weight:600}
th.n,td.n{text-align:right;white-space:nowrap}
small{font-size:.8rem;font-weight:normal}
th.n{white-space:normal}
.stack .h{display:none}
.blank{display:inline-block;border-bottom:1px solid #111;
min-width:4rem;max-width:100%;overflow:hidden;vertical-align:bottom}
dd>.blank{width:100%;height:1.9em;border:0}
[data-key]{unicode-bidi:isolate}
.f{white-space:nowrap}
.tick{display:inline-block;width:1rem;height:1rem;border:1.5px solid #111;vertical-align:-.15rem;margin-right:.4rem}
.caution{border-left:4px solid #111;padding:.2rem 0 .2rem .7rem}
.verdict{font-size:1.1rem;font-weight:bold}
.big{font-size:2rem;font-weight:bold;line-height:1.15}
.two{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(12rem,100%),1fr));gap:0 1rem}
.huge{font-size:2.6rem;font-weight:bold;line-height:1.1;margin:.3rem 0 0}
.cards{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(22rem,100%),1fr));gap:1rem}
.card{border:1.5px solid #111;padding:.8rem}
.card h2{margin-top:0}
figure{margin:.8rem 0}
figure svg{display:block;max-width:100%;height:auto}
.plots{columns:20rem;column-gap:1.5rem}
.plots figure{margin:0 0 1rem;break-inside:avoid}
.pair{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(20rem,100%),1fr));gap:0 2rem}
.three{display:grid;grid-template-columns:repeat(auto-fit,minmax(min(16rem,100%),1fr));gap:0 1rem}
.three th,.three td{padding:.3rem .25rem}
.pair dt{flex-basis:9rem}
.pair dd{flex-basis:10rem}
figcaption{color:#444;font-size:.9rem}
footer{font-size:.9rem;margin-top:1.5rem;border-top:1px solid #767676;padding-top:.4rem;color:#444;font-size:.9rem}
@media screen and (max-width:34rem){
.stack thead{display:none}
.stack tr{display:block;border-bottom:2px solid #767676;padding:.4rem 0}
.stack td,.stack td.n{display:flex;gap:.8rem;padding:.15rem 0;border:0;text-align:left;white-space:normal}
.stack td:first-child{font-weight:600}
.stack .h{display:block;flex:0 0 9rem;color:#444;font-weight:normal}
}
@media print{
body{max-width:none;padding:0;font-size:9.5pt;line-height:1.3}
p,ul,ol,dl,table{margin:3pt 0}
h2{margin:9pt 0 3pt}
dl>div,li{padding:1.5pt 0;margin:0}
th,td{padding:1.5pt 4pt}
h1{font-size:16pt}h2{font-size:12pt}h2,h3{break-after:avoid}
.wide,figure{overflow:visible}
figure,tr,li,dl>div,.caution,.card,.whole{break-inside:avoid}
thead{display:table-header-group}
figure svg{min-width:0!important;max-height:100vh}
footer{font-size:8pt;margin-top:.4rem}
.full{break-before:page;margin:0}
.full svg{max-width:none;max-height:none}
.poster{font-size:14pt}
.poster header,.poster main,.poster footer{margin-left:15mm;margin-right:15mm}
.poster header{padding-top:15mm}
a{color:inherit;text-decoration:none}
.cards{display:block}
.card{break-after:page;border:0;padding:0}
.card:last-child{break-after:auto}
.card.long{break-inside:auto}
header{margin-bottom:.5rem}
.tight>:first-child h2{margin-top:0}
.tight dl>div{padding:.08rem 0}
.tight th,.tight td{padding:.1rem .35rem}
.tight h2{margin:.7rem 0 .2rem}
.tight p,.tight dl,.tight table,.tight ul,.tight .caution{margin:.2rem 0}
.tight li{margin:.05rem 0}
.tight dd>.blank{height:1.1em}
.tight{font-size:9pt;line-height:1.25}
.tight h2{font-size:11pt}
.tight figcaption{font-size:7.5pt}
.plots{columns:3;column-gap:3mm}
.pair{grid-template-columns:1fr 1fr;gap:0 7mm}
.three{grid-template-columns:1fr 1fr 1fr;gap:0 7mm}
.pair dt{flex-basis:7.6rem}
.tight .tick{width:.75rem;height:.75rem}
.pair figure{margin:.3rem 0}
.pair figure svg{max-height:48mm}
.two{grid-template-columns:minmax(0,1fr) minmax(0,1fr);gap:0 5mm}
.wall dt{flex-basis:6.5rem}
.wall dd{flex-basis:8rem}
.wall dd>.blank{height:1.5em}
.wall{font-size:10.5pt}
.wall p,.wall li,.wall .caution{margin:.3rem 0}
.wall h3{margin:.5rem 0 .1rem}
.loop+.loop{break-before:page}
}
)";

std::string paper_size(Paper paper, System system) {
  const bool us = system == System::us;
  switch (paper) {
    case Paper::card: return us ? "5.5in 8.5in" : "A5";
    case Paper::page: break;
  }
  return us ? "letter" : "A4";
}

}  // namespace

std::string style_of(const SheetPage& page, System system) {
  if (!page.body.wall.empty())
    return fmt::format("@page{{size:{:.1f}mm {:.1f}mm;margin:0}}{}", 1000.0 * page.body.wall.front().width_m,
                       1000.0 * page.body.wall.front().height_m, look);
  return fmt::format("@page{{size:{};margin:{}mm}}{}", paper_size(page.paper, system),
                     page.paper == Paper::card ? 10 : 12, look);
}

}  // namespace slabwright::sheets
