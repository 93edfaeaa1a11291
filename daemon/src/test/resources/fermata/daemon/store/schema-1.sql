-- A home as the fermata of schema 1 left it: one made-up solve, recorded from a virtual cube.
BEGIN TRANSACTION;
CREATE TABLE capture (
    id INTEGER PRIMARY KEY AUTOINCREMENT,
    uuid TEXT NOT NULL UNIQUE,
    kind TEXT NOT NULL CHECK (kind IN ('radio', 'stream')),
    boot_id TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    started_mono_ns INTEGER NOT NULL,
    zone TEXT NOT NULL,
    cube TEXT NOT NULL,
    solver TEXT NOT NULL,
    hand TEXT NOT NULL CHECK (hand IN ('left', 'right', 'two', 'unknown')),
    profile_id INTEGER REFERENCES profile (id),
    origin TEXT NOT NULL,
    header TEXT NOT NULL,
    truth TEXT NOT NULL,
    CHECK ((kind = 'radio') = (profile_id IS NOT NULL))
) STRICT;
INSERT INTO "capture" VALUES(1,'791ecee9-6de5-4452-b7c0-28d8ea934c57','radio','00000000-0000-4000-8000-000000000001',1795551000000,25703930100,'Etc/UTC','galley cube','cook','left',1,'radio','','{"kind":"rehearsal","seed":1,"solves":1,"attempts":[{"number":1,"note":"before the last crossing","scramble":{"words":"B2 L2 B2 D F2 U B2 U2 L2 U2 F2 L2 U'' R'' F L'' D'' B'' D'' U L2 B''","announced":true,"hold":"UF","turns":{"from":0,"to":33},"from_solved":true},"solve":{"solved":true,"hold":"DB","turns":{"from":33,"to":96},"moves":[{"move":"R2","turns":{"from":33,"to":35},"slip":false,"rotation":false},{"move":"F","turns":{"from":35,"to":36},"slip":false,"rotation":false},{"move":"U''","turns":{"from":36,"to":37},"slip":false,"rotation":false},{"move":"l","turns":{"from":37,"to":38},"slip":false,"rotation":false},{"move":"U''","turns":{"from":38,"to":39},"slip":false,"rotation":false},{"move":"r","turns":{"from":39,"to":40},"slip":false,"rotation":false},{"move":"R","turns":{"from":40,"to":41},"slip":false,"rotation":false},{"move":"F","turns":{"from":41,"to":42},"slip":false,"rotation":false},{"move":"R''","turns":{"from":42,"to":43},"slip":false,"rotation":false},{"move":"R''","turns":{"from":43,"to":44},"slip":true,"rotation":false},{"move":"R","turns":{"from":44,"to":45},"slip":true,"rotation":false},{"move":"F''","turns":{"from":45,"to":46},"slip":false,"rotation":false},{"move":"R''","turns":{"from":46,"to":47},"slip":false,"rotation":false},{"move":"U","turns":{"from":47,"to":48},"slip":false,"rotation":false},{"move":"R","turns":{"from":48,"to":49},"slip":false,"rotation":false},{"move":"U2","turns":{"from":49,"to":51},"slip":false,"rotation":false},{"move":"R''","turns":{"from":51,"to":52},"slip":false,"rotation":false},{"move":"U''","turns":{"from":52,"to":53},"slip":false,"rotation":false},{"move":"R","turns":{"from":53,"to":54},"slip":false,"rotation":false},{"move":"U","turns":{"from":54,"to":55},"slip":false,"rotation":false},{"move":"R''","turns":{"from":55,"to":56},"slip":false,"rotation":false},{"move":"U2","turns":{"from":56,"to":58},"slip":false,"rotation":false},{"move":"F","turns":{"from":58,"to":59},"slip":false,"rotation":false},{"move":"U''","turns":{"from":59,"to":60},"slip":false,"rotation":false},{"move":"F''","turns":{"from":60,"to":61},"slip":false,"rotation":false},{"move":"R","turns":{"from":61,"to":62},"slip":false,"rotation":false},{"move":"U","turns":{"from":62,"to":63},"slip":false,"rotation":false},{"move":"R","turns":{"from":63,"to":64},"slip":false,"rotation":false},{"move":"D''","turns":{"from":64,"to":65},"slip":false,"rotation":false},{"move":"R''","turns":{"from":65,"to":66},"slip":false,"rotation":false},{"move":"U''","turns":{"from":66,"to":67},"slip":false,"rotation":false},{"move":"R","turns":{"from":67,"to":68},"slip":false,"rotation":false},{"move":"D","turns":{"from":68,"to":69},"slip":false,"rotation":false},{"move":"R2","turns":{"from":69,"to":71},"slip":false,"rotation":false},{"move":"U''","turns":{"from":71,"to":72},"slip":false,"rotation":false},{"move":"r''","turns":{"from":72,"to":73},"slip":false,"rotation":false},{"move":"U2","turns":{"from":73,"to":75},"slip":false,"rotation":false},{"move":"R","turns":{"from":75,"to":76},"slip":false,"rotation":false},{"move":"U","turns":{"from":76,"to":77},"slip":false,"rotation":false},{"move":"U","turns":{"from":77,"to":78},"slip":true,"rotation":false},{"move":"U''","turns":{"from":78,"to":79},"slip":true,"rotation":false},{"move":"R''","turns":{"from":79,"to":80},"slip":false,"rotation":false},{"move":"U","turns":{"from":80,"to":81},"slip":false,"rotation":false},{"move":"r","turns":{"from":81,"to":82},"slip":false,"rotation":false},{"move":"F","turns":{"from":82,"to":83},"slip":false,"rotation":false},{"move":"U","turns":{"from":83,"to":84},"slip":false,"rotation":false},{"move":"R''","turns":{"from":84,"to":85},"slip":false,"rotation":false},{"move":"D''","turns":{"from":85,"to":86},"slip":false,"rotation":false},{"move":"R","turns":{"from":86,"to":87},"slip":false,"rotation":false},{"move":"U","turns":{"from":87,"to":88},"slip":false,"rotation":false},{"move":"R''","turns":{"from":88,"to":89},"slip":false,"rotation":false},{"move":"D","turns":{"from":89,"to":90},"slip":false,"rotation":false},{"move":"R","turns":{"from":90,"to":91},"slip":false,"rotation":false},{"move":"U2","turns":{"from":91,"to":93},"slip":false,"rotation":false},{"move":"F''","turns":{"from":93,"to":94},"slip":false,"rotation":false},{"move":"U2","turns":{"from":94,"to":96},"slip":false,"rotation":false}],"stages":[{"name":"cross","case_name":"","turns":{"from":33,"to":40},"looks":1},{"name":"pair1","case_name":"FR","turns":{"from":40,"to":47},"looks":1},{"name":"pair2","case_name":"BR","turns":{"from":47,"to":56},"looks":1},{"name":"pair3","case_name":"BL","turns":{"from":56,"to":61},"looks":1},{"name":"pair4","case_name":"FL","turns":{"from":61,"to":71},"looks":1},{"name":"orient","case_name":"5","turns":{"from":71,"to":82},"looks":1},{"name":"permute","case_name":"Ab","turns":{"from":82,"to":94},"looks":1},{"name":"auf","case_name":"","turns":{"from":94,"to":96},"looks":1}],"rhythm":{"motor_micros":[174080,189940,189448,228048,171634,206026,213310,250033,220243,93888,108728,339642,241810,248157,216926,341903,170896,190569,277981,301037,193428,220798,356543,171950,267663,356529,262723,177042,264232,210169,251766,218032,154185,229674,222974,190083,171360,184875,218472,236523,140464,234194,182361,122923,186157,242931,220574,203016,321713,198660,220341,216281,189904,255158,210190,155889,165391,237188,123853,158446,226373,194387],"rests":[{"after_turn":36,"length_micros":194376,"cause":"REGRIP"},{"after_turn":43,"length_micros":159688,"cause":"SLIP"},{"after_turn":60,"length_micros":425372,"cause":"LOOK_AHEAD"},{"after_turn":62,"length_micros":174694,"cause":"REGRIP"},{"after_turn":70,"length_micros":738274,"cause":"RECOGNITION"},{"after_turn":77,"length_micros":226056,"cause":"SLIP"},{"after_turn":81,"length_micros":897971,"cause":"RECOGNITION"}],"regrips":[{"before_turn":37,"reason":"REACH"},{"before_turn":63,"reason":"WRIST"}]}}}],"others":[]}');
CREATE TABLE characteristic (
    id INTEGER PRIMARY KEY,
    uuid TEXT NOT NULL UNIQUE
) STRICT;
INSERT INTO "characteristic" VALUES(1,'acacdcfd-2a24-4e64-b0e7-16471a29d738');
INSERT INTO "characteristic" VALUES(2,'00002a19-0000-1000-8000-00805f9b34fb');
INSERT INTO "characteristic" VALUES(3,'b3cb4267-3d05-43d3-a261-fbfdfbcd347f');
CREATE TABLE connection (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    number INTEGER NOT NULL,
    first_ns INTEGER NOT NULL,
    PRIMARY KEY (capture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "connection" VALUES(1,0,28606455900);
INSERT INTO "connection" VALUES(1,1,35086007200);
CREATE TABLE derivation (
    capture_id INTEGER PRIMARY KEY REFERENCES capture (id),
    code_version TEXT NOT NULL,
    extent TEXT NOT NULL,
    heard INTEGER NOT NULL,
    repaired INTEGER NOT NULL,
    lost INTEGER NOT NULL,
    attempts INTEGER NOT NULL
) STRICT;
INSERT INTO "derivation" VALUES(1,'analysis-1/daemon-1','1.101 - 0',96,0,0,1);
CREATE TABLE dropped (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    frames INTEGER NOT NULL CHECK (frames > 0),
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;
CREATE TABLE event (
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    ordinal INTEGER NOT NULL,
    version INTEGER NOT NULL,
    kind TEXT NOT NULL,
    line TEXT NOT NULL,
    PRIMARY KEY (capture_id, ordinal)
) STRICT, WITHOUT ROWID;
INSERT INTO "event" VALUES(1,0,1,'mark','{"mark":"scramble","text":"B2 L2 B2 D F2 U B2 U2 L2 U2 F2 L2 U'' R'' F L'' D'' B'' D'' U L2 B''","at":13691739}');
CREATE TABLE frame (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    arrival_ns INTEGER NOT NULL,
    characteristic_id INTEGER NOT NULL REFERENCES characteristic (id),
    bytes BLOB NOT NULL,
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "frame" VALUES(1,1,3,38138943800,1,X'AE000080EE360088C6FA00001032547698BA0000AC');
INSERT INTO "frame" VALUES(1,1,4,38903291700,2,X'57');
INSERT INTO "frame" VALUES(1,1,5,38923291700,2,X'57');
INSERT INTO "frame" VALUES(1,1,6,42401754500,3,X'D40100F6FD3600010F0000000000000000000043');
INSERT INTO "frame" VALUES(1,1,7,42638983500,3,X'D40200D0FE3600110F4F1B0000000000000000BD');
INSERT INTO "frame" VALUES(1,1,8,42878134500,3,X'D40300C2FF3600210C4F1E4F1B00000000000085');
INSERT INTO "frame" VALUES(1,1,9,43035539600,3,X'D4040059003700310CEC124F1E4F1B0000000028');
INSERT INTO "frame" VALUES(1,1,10,43266985000,3,X'D4050056013700410FAC1FEC124F1E4F1B00007B');
INSERT INTO "frame" VALUES(1,1,11,43503161400,3,X'D4060046023700510F0F1EAC1FEC124F1E4F1BE7');
INSERT INTO "frame" VALUES(1,1,12,43875236600,3,X'D40700A803370051094F2C0F1EAC1FEC124F1E40');
INSERT INTO "frame" VALUES(1,1,13,44139237800,3,X'D40800C0043700510609234F2C0F1EAC1FEC12FE');
INSERT INTO "frame" VALUES(1,1,14,44326515300,3,X'D409005C0537005106861309234F2C0F1EAC1F71');
INSERT INTO "frame" VALUES(1,1,15,44705997000,3,X'D40A00FB0637005100E633861309234F2C0F1EA4');
INSERT INTO "frame" VALUES(1,1,16,45044639400,3,X'D40B0044083700510F2029E633861309234F2C09');
INSERT INTO "frame" VALUES(1,1,17,45249720600,3,X'D40C00FE083700510F4F172029E633861309236D');
INSERT INTO "frame" VALUES(1,1,18,45524215300,3,X'D40D00250A37005100EF244F172029E6338613E5');
INSERT INTO "frame" VALUES(1,1,19,45762340600,3,X'D40E00130B37005100C01DEF244F172029E633F5');
INSERT INTO "frame" VALUES(1,1,20,46090366300,3,X'D40F005D0C3700510C4029C01DEF244F17202952');
INSERT INTO "frame" VALUES(1,1,21,46234242300,3,X'D41000DD0C3700510C0C104029C01DEF244F17F3');
INSERT INTO "frame" VALUES(1,1,22,46563756400,3,X'D41100310E370051008C2A0C104029C01DEF24E4');
INSERT INTO "frame" VALUES(1,1,23,46728941400,3,X'D41200D30E3700510040148C2A0C104029C01DB2');
INSERT INTO "frame" VALUES(1,1,24,46997070000,3,X'D41300E10F37005106C02140148C2A0C10402983');
INSERT INTO "frame" VALUES(1,1,25,47082454400,3,X'D41400331037005106460AC02140148C2A0C10D7');
INSERT INTO "frame" VALUES(1,1,26,47404646200,3,X'D415007D113700510C4629460AC02140148C2AA4');
INSERT INTO "frame" VALUES(1,1,27,47554611000,3,X'D416000D123700510C0C124629460AC021401442');
INSERT INTO "frame" VALUES(1,1,28,47743452700,3,X'D41700C912370051028C170C124629460AC021C2');
INSERT INTO "frame" VALUES(1,1,29,47984710700,3,X'D41800B01337005105E21C8C170C124629460A38');
INSERT INTO "frame" VALUES(1,1,30,48366481900,3,X'D419002E1537005106C52FE21C8C170C124629AE');
INSERT INTO "frame" VALUES(1,1,31,48676670700,3,X'D41A0068163700510E4627C52FE21C8C170C1248');
INSERT INTO "frame" VALUES(1,1,32,48996380500,3,X'D41B00A4173700510B8E274627C52FE21C8C170C');
INSERT INTO "frame" VALUES(1,1,33,49201652800,3,X'D41C008518370051112B1C8E274627C52FE21C2D');
INSERT INTO "frame" VALUES(1,1,34,49532426600,3,X'D41D00D5193700510B112A2B1C8E274627C52F31');
INSERT INTO "frame" VALUES(1,1,35,49926983300,3,X'D41E00441B37005100EB2D112A2B1C8E27462715');
INSERT INTO "frame" VALUES(1,1,36,50171877100,3,X'D41F004D1C3700510C2021EB2D112A2B1C8E2779');
INSERT INTO "frame" VALUES(1,1,37,50352072100,3,X'D42000F31C3700510CCC142021EB2D112A2B1C68');
INSERT INTO "frame" VALUES(1,1,38,50589768700,3,X'D42100D81D37005111AC1CCC142021EB2D112A20');
INSERT INTO "frame" VALUES(1,1,39,55001808600,3,X'D422001F2F37005103F1FFAC1CCC142021EB2DDA');
INSERT INTO "frame" VALUES(1,1,40,55180484500,3,X'D42300CE2F37005103E315F1FFAC1CCC14202184');
INSERT INTO "frame" VALUES(1,1,41,55361453900,3,X'D424008B303700510FA317E315F1FFAC1CCC1493');
INSERT INTO "frame" VALUES(1,1,42,55536115500,3,X'D4250049313700510BCF17A317E315F1FFAC1C8B');
INSERT INTO "frame" VALUES(1,1,43,55960904700,3,X'D42600EF3237005103CB34CF17A317E315F1FF2B');
INSERT INTO "frame" VALUES(1,1,44,56141888300,3,X'D427009B33370051088315CB34CF17A317E3157B');
INSERT INTO "frame" VALUES(1,1,45,56355597700,3,X'D4280069343700510CC8198315CB34CF17A31746');
INSERT INTO "frame" VALUES(1,1,46,56563859700,3,X'D429003E3537005103AC1AC8198315CB34CF17E5');
INSERT INTO "frame" VALUES(1,1,47,56835497600,3,X'D42A0038363700510F431FAC1AC8198315CB341C');
INSERT INTO "frame" VALUES(1,1,48,57032292600,3,X'D42B00153737005105AF1B431FAC1AC81983150D');
INSERT INTO "frame" VALUES(1,1,49,57123186200,3,X'D42C00723737005105A50BAF1B431FAC1AC81921');
INSERT INTO "frame" VALUES(1,1,50,57395004000,3,X'D42D007F3837005103A521A50BAF1B431FAC1AAA');
INSERT INTO "frame" VALUES(1,1,51,57737333800,3,X'D42E00D33937005111832AA521A50BAF1B431F88');
INSERT INTO "frame" VALUES(1,1,52,57977735700,3,X'D42F00C43A37005105311E832AA521A50BAF1BF5');
INSERT INTO "frame" VALUES(1,1,53,58246917900,3,X'D43000BD3B37005109251F311E832AA521A50BD6');
INSERT INTO "frame" VALUES(1,1,54,58456186300,3,X'D43100953C37005103091B251F311E832AA521A0');
INSERT INTO "frame" VALUES(1,1,55,58775066900,3,X'D43200EB3D37005109C32A091B251F311E832A7B');
INSERT INTO "frame" VALUES(1,1,56,58969057700,3,X'D43300963E370051096915C32A091B251F311EF6');
INSERT INTO "frame" VALUES(1,1,57,59131360200,3,X'D43400553F37005105E9176915C32A091B251F30');
INSERT INTO "frame" VALUES(1,1,58,59440954400,3,X'D435006B403700510BC522E9176915C32A091BCA');
INSERT INTO "frame" VALUES(1,1,59,59740111200,3,X'D43600984137005103AB25C522E9176915C32A5C');
INSERT INTO "frame" VALUES(1,1,60,59930535600,3,X'D437005942370051092318AB25C522E917691503');
INSERT INTO "frame" VALUES(1,1,61,60134363700,3,X'D43800364337005105A91B2318AB25C522E91784');
INSERT INTO "frame" VALUES(1,1,62,60490313300,3,X'D439009B4437005109A52CA91B2318AB25C52243');
INSERT INTO "frame" VALUES(1,1,63,60671529000,3,X'D43A004745370051098915A52CA91B2318AB25EF');
INSERT INTO "frame" VALUES(1,1,64,60942881200,3,X'D43B0052463700510F69218915A52CA91B231823');
INSERT INTO "frame" VALUES(1,1,65,61305281200,3,X'D43C00B7473700510BAF2C69218915A52CA91BC2');
INSERT INTO "frame" VALUES(1,1,66,61562064900,3,X'D43D00BD4837005111CB20AF2C69218915A52C29');
INSERT INTO "frame" VALUES(1,1,67,62170577200,3,X'D43E00184B37005103714BCB20AF2C69218915D8');
INSERT INTO "frame" VALUES(1,1,68,62412209800,3,X'D43F00204C370051090321714BCB20AF2C69218A');
INSERT INTO "frame" VALUES(1,1,69,62792767700,3,X'D44000A14D3700510329300321714BCB20AF2C6C');
INSERT INTO "frame" VALUES(1,1,70,63071901400,3,X'D441009D4E37005102831F29300321714BCB20EF');
INSERT INTO "frame" VALUES(1,1,71,63288740400,3,X'D44200774F37005105421B831F29300321714B2D');
INSERT INTO "frame" VALUES(1,1,72,63430701400,3,X'D4430011503700510B4513421B831F29300321E6');
INSERT INTO "frame" VALUES(1,1,73,63680536500,3,X'D44400F75037005103CB1C4513421B831F29308B');
INSERT INTO "frame" VALUES(1,1,74,63874612200,3,X'D44500D65137005100E31BCB1C4513421B831F47');
INSERT INTO "frame" VALUES(1,1,75,64066831900,3,X'D44600945237005105C017E31BCB1C4513421BE8');
INSERT INTO "frame" VALUES(1,1,76,64241502800,3,X'D447003F53370051056515C017E31BCB1C4513CC');
INSERT INTO "frame" VALUES(1,1,77,65176869200,3,X'D44800DA563700510B65736515C017E31BCB1C97');
INSERT INTO "frame" VALUES(1,1,78,65373267500,3,X'D44900B5573700510E6B1B65736515C017E31BF6');
INSERT INTO "frame" VALUES(1,1,79,65614336500,3,X'D44A00A158370051068E1D6B1B65736515C01717');
INSERT INTO "frame" VALUES(1,1,80,65776207400,3,X'D44B002E5937005106A6118E1D6B1B65736515A4');
INSERT INTO "frame" VALUES(1,1,81,66006441300,3,X'D44C00185A37005103461DA6118E1D6B1B657305');
INSERT INTO "frame" VALUES(1,1,82,66184715400,3,X'D44D00CE5A37005106C316461DA6118E1D6B1B00');
INSERT INTO "frame" VALUES(1,1,83,66317819600,3,X'D44E00495B37005106660FC316461DA6118E1D50');
INSERT INTO "frame" VALUES(1,1,84,66730813600,3,X'D44F00E55C370051088633660FC316461DA611D4');
INSERT INTO "frame" VALUES(1,1,85,66967003600,3,X'D45000D85D37005105681E8633660FC316461D29');
INSERT INTO "frame" VALUES(1,1,86,67180024000,3,X'D45100B55E37005106A51B681E8633660FC31666');
INSERT INTO "frame" VALUES(1,1,87,67399094300,3,X'D45200805F3700510C6619A51B681E8633660F6E');
INSERT INTO "frame" VALUES(1,1,88,68587501700,3,X'D4530044643700510F8C986619A51B681E8633C0');
INSERT INTO "frame" VALUES(1,1,89,68792488700,3,X'D454000A6537005109CF188C986619A51B681EB6');
INSERT INTO "frame" VALUES(1,1,90,69019015900,3,X'D45500E76537005105A91BCF188C986619A51B2F');
INSERT INTO "frame" VALUES(1,1,91,69264280200,3,X'D45600BF6637005102051BA91BCF188C98661945');
INSERT INTO "frame" VALUES(1,1,92,69421979700,3,X'D457007D6737005103C217051BA91BCF188C984C');
INSERT INTO "frame" VALUES(1,1,93,69667126800,3,X'D458007C6837005109E31FC217051BA91BCF18FA');
INSERT INTO "frame" VALUES(1,1,94,69889369300,3,X'D459004E6937005105491AE31FC217051BA91BF8');
INSERT INTO "frame" VALUES(1,1,95,70059520200,3,X'D45A00EA69370051008513491AE31FC217051B2E');
INSERT INTO "frame" VALUES(1,1,96,70217354800,3,X'D45B008F6A37005103A0148513491AE31FC2173D');
INSERT INTO "frame" VALUES(1,1,97,70458907500,3,X'D45C007D6B37005109C31DA0148513491AE31F16');
INSERT INTO "frame" VALUES(1,1,98,70577454100,3,X'D45D00F86B37005109690FC31DA0148513491AA4');
INSERT INTO "frame" VALUES(1,1,99,70722281400,3,X'D45E00976C37005111E913690FC31DA0148513D2');
INSERT INTO "frame" VALUES(1,1,100,70958262200,3,X'D45F00796D37005109511CE913690FC31DA01424');
INSERT INTO "frame" VALUES(1,1,101,71137669100,3,X'D460003C6E370051096918511CE913690FC31D34');
CREATE TABLE link_event (
    capture_id INTEGER NOT NULL,
    connection INTEGER NOT NULL,
    ordinal INTEGER NOT NULL,
    at_ns INTEGER NOT NULL,
    kind TEXT NOT NULL,
    detail TEXT NOT NULL,
    PRIMARY KEY (capture_id, connection, ordinal),
    FOREIGN KEY (capture_id, connection) REFERENCES connection (capture_id, number)
) STRICT, WITHOUT ROWID;
INSERT INTO "link_event" VALUES(1,0,0,28606455900,'service','present generation 1');
INSERT INTO "link_event" VALUES(1,0,1,33150092200,'discovered','02:00:00:00:00:02 galley cube');
INSERT INTO "link_event" VALUES(1,1,0,35086007200,'connected','02:00:00:00:00:02');
INSERT INTO "link_event" VALUES(1,1,1,36870228300,'resolved','');
INSERT INTO "link_event" VALUES(1,1,2,37798390800,'subscribed','b3cb4267-3d05-43d3-a261-fbfdfbcd347f 00002a19-0000-1000-8000-00805f9b34fb');
INSERT INTO "link_event" VALUES(1,1,102,75116368000,'lost','STOPPED');
CREATE TABLE night (
    day TEXT PRIMARY KEY,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "night" VALUES('2026-11-24','analysis-1/daemon-1','d2b8240241c9','{"day":"2026-11-24","solves":1,"abandoned":0,"best_us":16157000,"mean_us":16157000,"spread_us":null,"average5_us":{"latest":null,"best":null},"trimmed12_us":{"latest":null,"best":null},"hotspots":[{"before":"cross","after":"pair1","count":1,"rest_us":null},{"before":"pair1","after":"pair2","count":1,"rest_us":null},{"before":"pair2","after":"pair3","count":1,"rest_us":null},{"before":"pair3","after":"pair4","count":1,"rest_us":null},{"before":"pair4","after":"orient","count":1,"rest_us":null},{"before":"orient","after":"permute","count":1,"rest_us":null},{"before":"permute","after":"auf","count":1,"rest_us":null}],"derived":{"code":"analysis-1","snapshot":"d2b8240241c9"}}');
CREATE TABLE profile (
    id INTEGER PRIMARY KEY,
    hash TEXT NOT NULL UNIQUE,
    json TEXT NOT NULL
) STRICT;
INSERT INTO "profile" VALUES(1,'182d4d76b815aae8a55eb7146ab5b151f7bbb757900215dce1d5b251c58edbb3','{
  "format": "stream-profile",
  "version": 1,
  "name": "Fermata open layout 1",
  "recognise": { "service": "9e4824b2-a5f5-4d89-9ca7-68bc6d634610" },
  "colours": {
    "U": "#f7f7f2", "R": "#c8252c", "F": "#1f9d55", "D": "#f2c80f", "L": "#ee7d1a", "B": "#1f5fbf"
  },
  "subscribe": [
    { "characteristic": "b3cb4267-3d05-43d3-a261-fbfdfbcd347f", "frames": ["turns"] },
    { "characteristic": "2a19", "frames": ["battery"] }
  ],
  "read": [
    { "characteristic": "acacdcfd-2a24-4e64-b0e7-16471a29d738", "frames": ["state"] },
    { "characteristic": "2a19", "frames": ["battery"] }
  ],
  "frames": {
    "turns": {
      "kind": "turns",
      "bytes": 20,
      "constants": [{ "byte": 0, "value": 212 }],
      "sequence": { "byte": 1, "bits": 16 },
      "clock": { "byte": 3, "bits": 32, "tickMicros": 1000 },
      "fresh": { "byte": 7, "bits": 4 },
      "code": { "byte": 8, "bits": 5 },
      "history": {
        "stride": 16,
        "entries": 5,
        "order": "newest-first",
        "count": { "byte": 7, "bit": 4, "bits": 4 },
        "code": { "byte": 9, "bits": 5 },
        "before": { "byte": 9, "bit": 5, "bits": 11, "saturates": true }
      },
      "turns": {
        "0": "U", "1": "U2", "2": "U''",
        "3": "R", "4": "R2", "5": "R''",
        "6": "F", "7": "F2", "8": "F''",
        "9": "D", "10": "D2", "11": "D''",
        "12": "L", "13": "L2", "14": "L''",
        "15": "B", "16": "B2", "17": "B''"
      },
      "checksums": [{ "kind": "crc8", "byte": 19, "from": 0, "to": 19, "polynomial": 7, "initial": 255 }]
    },
    "state": {
      "kind": "state",
      "bytes": 21,
      "constants": [{ "byte": 0, "value": 174 }],
      "sequence": { "byte": 1, "bits": 16 },
      "clock": { "byte": 3, "bits": 32, "tickMicros": 1000 },
      "cubies": {
        "corners": ["URF", "UFL", "ULB", "UBR", "DFR", "DLF", "DBL", "DRB"],
        "edges": ["UR", "UF", "UL", "UB", "DR", "DF", "DL", "DB", "FR", "FL", "BL", "BR"],
        "cornerPlaces": { "byte": 7, "bits": 3 },
        "cornerTwists": { "byte": 10, "bits": 2 },
        "edgePlaces": { "byte": 12, "bits": 4 },
        "edgeFlips": { "byte": 18, "bits": 1 }
      },
      "checksums": [{ "kind": "crc8", "byte": 20, "from": 0, "to": 20, "polynomial": 7, "initial": 255 }]
    },
    "battery": { "kind": "battery", "bytes": 1, "percent": { "byte": 0 } }
  }
}
');
CREATE TABLE snapshot (
    id TEXT PRIMARY KEY,
    day TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "snapshot" VALUES('d2b8240241c9','2026-11-24','{"median_micros":221000,"log_deviation":0.227990014313939,"deviations":2.5,"floor_micros":250000,"intervals":62}');
CREATE TABLE solve (
    id TEXT PRIMARY KEY,
    capture_id INTEGER NOT NULL REFERENCES capture (id),
    day TEXT NOT NULL,
    started_wall_ms INTEGER NOT NULL,
    first_turn INTEGER NOT NULL,
    code_version TEXT NOT NULL,
    snapshot_id TEXT NOT NULL,
    summary TEXT NOT NULL,
    json TEXT NOT NULL
) STRICT, WITHOUT ROWID;
INSERT INTO "solve" VALUES('1-33',1,'2026-11-24',1795551029276,33,'analysis-1/daemon-1','d2b8240241c9','{"id":"1-33","day":"2026-11-24","number":0,"started_at":"2026-11-24T20:10:29","hand":"left","solved":true,"outcome":"solved","set_aside":false,"time_us":16157000,"turns":63,"lost":0,"method":"CFOP","rest_us":3580000,"stages_us":{"cross":1354000,"pair1":1627000,"pair2":2162000,"pair3":1415000,"pair4":2690000,"orient":3137000,"permute":3351000,"auf":421000}}','{"id":"1-33","day":"2026-11-24","number":0,"started_at":"2026-11-24T20:10:29","hand":"left","clock":"device","scramble":"B2 L2 B2 D F2 U B2 U2 L2 U2 F2 L2 U'' R'' F L'' D'' B'' D'' U L2 B''","start_facelets":"RLLFURLBDFDBURRDDUULRRFBFLBDDRRDFLDRFLFFLBUFLDUUUBUBBB","face_colours":{"U":"white","R":"red","F":"green","D":"yellow","L":"orange","B":"blue"},"solved":true,"outcome":"solved","set_aside":false,"scramble_end":{"known":"announced_state","probability":1.0},"time_us":16157000,"gap_us":4423000,"method":"CFOP","cross_colour":"white","turns":[{"index":0,"at_us":0,"core":"R","source":"heard"},{"index":1,"at_us":175000,"core":"R","source":"heard"},{"index":2,"at_us":364000,"core":"B","source":"heard"},{"index":3,"at_us":554000,"core":"D''","source":"heard"},{"index":4,"at_us":976000,"core":"R","source":"heard"},{"index":5,"at_us":1148000,"core":"F''","source":"heard"},{"index":6,"at_us":1354000,"core":"L","source":"heard"},{"index":7,"at_us":1567000,"core":"R","source":"heard"},{"index":8,"at_us":1817000,"core":"B","source":"heard"},{"index":9,"at_us":2038000,"core":"R''","source":"heard"},{"index":10,"at_us":2131000,"core":"R''","source":"heard"},{"index":11,"at_us":2400000,"core":"R","source":"heard"},{"index":12,"at_us":2740000,"core":"B''","source":"heard"},{"index":13,"at_us":2981000,"core":"R''","source":"heard"},{"index":14,"at_us":3230000,"core":"D","source":"heard"},{"index":15,"at_us":3446000,"core":"R","source":"heard"},{"index":16,"at_us":3788000,"core":"D","source":"heard"},{"index":17,"at_us":3959000,"core":"D","source":"heard"},{"index":18,"at_us":4150000,"core":"R''","source":"heard"},{"index":19,"at_us":4428000,"core":"D''","source":"heard"},{"index":20,"at_us":4729000,"core":"R","source":"heard"},{"index":21,"at_us":4922000,"core":"D","source":"heard"},{"index":22,"at_us":5143000,"core":"R''","source":"heard"},{"index":23,"at_us":5500000,"core":"D","source":"heard"},{"index":24,"at_us":5672000,"core":"D","source":"heard"},{"index":25,"at_us":5939000,"core":"B","source":"heard"},{"index":26,"at_us":6296000,"core":"D''","source":"heard"},{"index":27,"at_us":6558000,"core":"B''","source":"heard"},{"index":28,"at_us":7161000,"core":"R","source":"heard"},{"index":29,"at_us":7425000,"core":"D","source":"heard"},{"index":30,"at_us":7810000,"core":"R","source":"heard"},{"index":31,"at_us":8062000,"core":"U''","source":"heard"},{"index":32,"at_us":8280000,"core":"R''","source":"heard"},{"index":33,"at_us":8434000,"core":"D''","source":"heard"},{"index":34,"at_us":8664000,"core":"R","source":"heard"},{"index":35,"at_us":8887000,"core":"U","source":"heard"},{"index":36,"at_us":9077000,"core":"R''","source":"heard"},{"index":37,"at_us":9248000,"core":"R''","source":"heard"},{"index":38,"at_us":10171000,"core":"D''","source":"heard"},{"index":39,"at_us":10390000,"core":"L''","source":"heard"},{"index":40,"at_us":10626000,"core":"F","source":"heard"},{"index":41,"at_us":10767000,"core":"F","source":"heard"},{"index":42,"at_us":11001000,"core":"R","source":"heard"},{"index":43,"at_us":11183000,"core":"F","source":"heard"},{"index":44,"at_us":11306000,"core":"F","source":"heard"},{"index":45,"at_us":11718000,"core":"F''","source":"heard"},{"index":46,"at_us":11961000,"core":"R''","source":"heard"},{"index":47,"at_us":12182000,"core":"F","source":"heard"},{"index":48,"at_us":12385000,"core":"L","source":"heard"},{"index":49,"at_us":13605000,"core":"B","source":"heard"},{"index":50,"at_us":13803000,"core":"D","source":"heard"},{"index":51,"at_us":14024000,"core":"R''","source":"heard"},{"index":52,"at_us":14240000,"core":"U''","source":"heard"},{"index":53,"at_us":14430000,"core":"R","source":"heard"},{"index":54,"at_us":14685000,"core":"D","source":"heard"},{"index":55,"at_us":14895000,"core":"R''","source":"heard"},{"index":56,"at_us":15051000,"core":"U","source":"heard"},{"index":57,"at_us":15216000,"core":"R","source":"heard"},{"index":58,"at_us":15454000,"core":"D","source":"heard"},{"index":59,"at_us":15577000,"core":"D","source":"heard"},{"index":60,"at_us":15736000,"core":"B''","source":"heard"},{"index":61,"at_us":15962000,"core":"D","source":"heard"},{"index":62,"at_us":16157000,"core":"D","source":"heard"}],"stages":[{"name":"cross","case":null,"faces":["U"],"from":0,"to":7,"start_us":0,"end_us":1354000,"parts":[]},{"name":"pair1","case":"DFR-UB","faces":["F","R"],"from":7,"to":14,"start_us":1354000,"end_us":2981000,"parts":[]},{"name":"pair2","case":"UBR-UB","faces":["B","R"],"from":14,"to":23,"start_us":2981000,"end_us":5143000,"parts":[]},{"name":"pair3","case":"BUL-UL","faces":["B","L"],"from":23,"to":28,"start_us":5143000,"end_us":6558000,"parts":[]},{"name":"pair4","case":"UBR-FR","faces":["F","L"],"from":28,"to":38,"start_us":6558000,"end_us":9248000,"parts":[]},{"name":"orient","case":"5","faces":[],"from":38,"to":49,"start_us":9248000,"end_us":12385000,"parts":[]},{"name":"permute","case":"Ab","faces":[],"from":49,"to":61,"start_us":12385000,"end_us":15736000,"parts":[]},{"name":"auf","case":null,"faces":[],"from":61,"to":63,"start_us":15736000,"end_us":16157000,"parts":[]}],"rests":[{"after_turn":3,"start_us":554000,"length_us":422000,"fermata":null},{"after_turn":27,"start_us":6558000,"length_us":603000,"fermata":null},{"after_turn":37,"start_us":9248000,"length_us":923000,"fermata":null},{"after_turn":44,"start_us":11306000,"length_us":412000,"fermata":null},{"after_turn":48,"start_us":12385000,"length_us":1220000,"fermata":null}],"gaps":[],"derived":{"code":"analysis-1","snapshot":"d2b8240241c9"}}');
CREATE TRIGGER frame_is_append_only BEFORE UPDATE ON frame
BEGIN SELECT RAISE(ABORT, 'frames are appended, never altered'); END;
CREATE TRIGGER event_is_append_only BEFORE UPDATE ON event
BEGIN SELECT RAISE(ABORT, 'events are appended, never altered'); END;
CREATE INDEX solve_by_day ON solve (day, started_wall_ms, capture_id, first_turn);
CREATE INDEX solve_by_capture ON solve (capture_id);
DELETE FROM "sqlite_sequence";
INSERT INTO "sqlite_sequence" VALUES('capture',1);
COMMIT;
PRAGMA user_version = 1;
